using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261127143950_CoveredRunFigures")]
    public partial class CoveredRunFigures : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_run_figures_procedure_revision_id_parameter_started_at",
                table: "run_figures"
            );

            migrationBuilder
                .CreateIndex(
                    name: "ix_run_figures_procedure_revision_id_parameter_started_at",
                    table: "run_figures",
                    columns: new[] { "procedure_revision_id", "parameter", "started_at" }
                )
                .Annotation(
                    "Npgsql:IndexInclude",
                    new[]
                    {
                        "run_id",
                        "machine_id",
                        "tool_id",
                        "operator_id",
                        "mean_si",
                        "standard_deviation_si",
                        "tool_metres",
                    }
                );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_run_figures_procedure_revision_id_parameter_started_at",
                table: "run_figures"
            );

            migrationBuilder.CreateIndex(
                name: "ix_run_figures_procedure_revision_id_parameter_started_at",
                table: "run_figures",
                columns: new[] { "procedure_revision_id", "parameter", "started_at" }
            );
        }
    }
}
