using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261127135308_InstrumentsByTime")]
    public partial class InstrumentsByTime : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_joint_fit_ups_instrument_id",
                table: "joint_fit_ups"
            );

            migrationBuilder.CreateIndex(
                name: "ix_sections_tested_at",
                table: "sections",
                column: "tested_at"
            );

            migrationBuilder.CreateIndex(
                name: "ix_pressure_tests_tested_at",
                table: "pressure_tests",
                column: "tested_at"
            );

            migrationBuilder.CreateIndex(
                name: "ix_leak_tests_tested_at",
                table: "leak_tests",
                column: "tested_at"
            );

            migrationBuilder
                .CreateIndex(
                    name: "ix_joint_fit_ups_instrument_id_measured_at",
                    table: "joint_fit_ups",
                    columns: new[] { "instrument_id", "measured_at" }
                )
                .Annotation("Npgsql:IndexInclude", new[] { "vessel_id" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(name: "ix_sections_tested_at", table: "sections");

            migrationBuilder.DropIndex(
                name: "ix_pressure_tests_tested_at",
                table: "pressure_tests"
            );

            migrationBuilder.DropIndex(name: "ix_leak_tests_tested_at", table: "leak_tests");

            migrationBuilder.DropIndex(
                name: "ix_joint_fit_ups_instrument_id_measured_at",
                table: "joint_fit_ups"
            );

            migrationBuilder.CreateIndex(
                name: "ix_joint_fit_ups_instrument_id",
                table: "joint_fit_ups",
                column: "instrument_id"
            );
        }
    }
}
