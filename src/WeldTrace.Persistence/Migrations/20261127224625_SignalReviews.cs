using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261127224625_SignalReviews")]
    public partial class SignalReviews : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "signal_reviews",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    run_id = table.Column<Guid>(type: "uuid", nullable: false),
                    run_label = table.Column<string>(type: "text", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    seen = table.Column<string>(type: "jsonb", nullable: false),
                    conclusion = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    text = table.Column<string>(
                        type: "character varying(1000)",
                        maxLength: 1000,
                        nullable: false
                    ),
                    finding_id = table.Column<Guid>(type: "uuid", nullable: true),
                    finding_number = table.Column<int>(type: "integer", nullable: true),
                    reviewer_name = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_signal_reviews", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_signal_reviews_run_id",
                table: "signal_reviews",
                column: "run_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_signal_reviews_vessel_id",
                table: "signal_reviews",
                column: "vessel_id"
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "signal_reviews");
        }
    }
}
