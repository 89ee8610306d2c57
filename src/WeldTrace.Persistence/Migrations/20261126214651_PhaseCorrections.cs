using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    public partial class PhaseCorrections : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "phase_corrections",
                table: "weld_runs",
                type: "jsonb",
                nullable: true
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "phase_corrections", table: "weld_runs");
        }
    }
}
