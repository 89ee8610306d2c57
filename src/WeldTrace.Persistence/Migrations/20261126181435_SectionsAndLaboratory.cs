using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126181435_SectionsAndLaboratory")]
    public partial class SectionsAndLaboratory : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<string>(
                name: "measurement",
                table: "sections",
                type: "jsonb",
                nullable: true,
                oldClrType: typeof(string),
                oldType: "jsonb"
            );

            migrationBuilder.AddColumn<string>(
                name: "picture",
                table: "sections",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "standards",
                table: "sections",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "laboratory_tests",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: true),
                    production_lot = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    subject = table.Column<string>(type: "jsonb", nullable: false),
                    test = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    header = table.Column<string>(type: "jsonb", nullable: false),
                    entry = table.Column<string>(type: "jsonb", nullable: false),
                    lines = table.Column<string>(type: "jsonb", nullable: false),
                    instruments = table.Column<string>(type: "jsonb", nullable: false),
                    file_sha256 = table.Column<string>(
                        type: "character varying(64)",
                        maxLength: 64,
                        nullable: true
                    ),
                    verdict = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    verdict_sentence = table.Column<string>(type: "text", nullable: false),
                    tester_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tester_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    signed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_laboratory_tests", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_laboratory_tests_production_lot",
                table: "laboratory_tests",
                column: "production_lot"
            );

            migrationBuilder.CreateIndex(
                name: "ix_laboratory_tests_vessel_id",
                table: "laboratory_tests",
                column: "vessel_id"
            );
            migrationBuilder.Sql(
                """
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON laboratory_tests
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "laboratory_tests");

            migrationBuilder.DropColumn(name: "picture", table: "sections");

            migrationBuilder.DropColumn(name: "standards", table: "sections");

            migrationBuilder.AlterColumn<string>(
                name: "measurement",
                table: "sections",
                type: "jsonb",
                nullable: false,
                defaultValue: "",
                oldClrType: typeof(string),
                oldType: "jsonb",
                oldNullable: true
            );
        }
    }
}
