using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126214651_PhaseCorrections")]
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
            migrationBuilder.CreateTable(
                name: "run_figures",
                columns: table => new
                {
                    run_id = table.Column<Guid>(type: "uuid", nullable: false),
                    parameter = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    started_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    procedure_revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    machine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tool_id = table.Column<Guid>(type: "uuid", nullable: false),
                    operator_id = table.Column<Guid>(type: "uuid", nullable: false),
                    mean_si = table.Column<double>(type: "double precision", nullable: false),
                    standard_deviation_si = table.Column<double>(
                        type: "double precision",
                        nullable: false
                    ),
                    tool_metres = table.Column<double>(type: "double precision", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_run_figures", x => new { x.run_id, x.parameter });
                }
            );
            migrationBuilder.CreateIndex(
                name: "ix_run_figures_procedure_revision_id_parameter_started_at",
                table: "run_figures",
                columns: new[] { "procedure_revision_id", "parameter", "started_at" }
            );

            // The figures of runs that were judged before they were kept apart; words of parameters are written otherwise in JSON.
            migrationBuilder.Sql(
                """
                INSERT INTO run_figures
                SELECT r.id, replace(initcap(replace(p->>'parameter', '-', ' ')), ' ', ''), r.started_at,
                    r.procedure_revision_id, r.machine_id, r.tool_id, r.operator_id,
                    (p->>'meanSi')::double precision, (p->>'standardDeviationSi')::double precision,
                    (SELECT coalesce(sum(b.travelled_m), 0) FROM weld_runs b
                        WHERE b.tool_id = r.tool_id AND b.started_at <= r.started_at)
                FROM weld_runs r CROSS JOIN LATERAL jsonb_array_elements(r.log->'parameters') p
                WHERE r.log IS NOT NULL
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "run_figures");
            migrationBuilder.DropColumn(name: "phase_corrections", table: "weld_runs");
        }
    }
}
