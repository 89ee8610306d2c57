using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126080559_Gates")]
    public partial class Gates : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "certificates",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    attests = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    expires_on = table.Column<DateOnly>(type: "date", nullable: false),
                    text = table.Column<string>(type: "jsonb", nullable: false),
                    file_sha256 = table.Column<string>(
                        type: "character varying(64)",
                        maxLength: 64,
                        nullable: true
                    ),
                    confirmations = table.Column<string>(type: "jsonb", nullable: false),
                    revocations = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_certificates", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "instruments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    mark = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    measures = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    text = table.Column<string>(type: "jsonb", nullable: false),
                    calibrations = table.Column<string>(type: "jsonb", nullable: false),
                    withdrawn_because = table.Column<string>(type: "text", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instruments", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_certificates_number",
                table: "certificates",
                column: "number",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_certificates_person_id",
                table: "certificates",
                column: "person_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_instruments_mark",
                table: "instruments",
                column: "mark",
                unique: true
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "certificates");

            migrationBuilder.DropTable(name: "instruments");
        }
    }
}
