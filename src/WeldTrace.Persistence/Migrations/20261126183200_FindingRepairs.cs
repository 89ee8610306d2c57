using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126183200_FindingRepairs")]
    public partial class FindingRepairs : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "board",
                table: "findings",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "cause",
                table: "findings",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "containments",
                table: "findings",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "planned_repair",
                table: "findings",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "repair",
                table: "findings",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "production_tests",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    mark = table.Column<string>(
                        type: "character varying(1000)",
                        maxLength: 1000,
                        nullable: false
                    ),
                    machine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    machine_name = table.Column<string>(type: "text", nullable: false),
                    procedure_revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    procedure_label = table.Column<string>(type: "text", nullable: false),
                    tool_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tool_mark = table.Column<string>(type: "text", nullable: false),
                    result = table.Column<string>(
                        type: "character varying(1000)",
                        maxLength: 1000,
                        nullable: false
                    ),
                    has_passed = table.Column<bool>(type: "boolean", nullable: false),
                    inspector_name = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_production_tests", x => x.id);
                }
            );

            migrationBuilder
                .CreateIndex(
                    name: "ix_weld_runs_machine_id_started_at",
                    table: "weld_runs",
                    columns: new[] { "machine_id", "started_at" }
                )
                .Annotation("Npgsql:IndexInclude", new[] { "vessel_id" });

            migrationBuilder
                .CreateIndex(
                    name: "ix_weld_runs_operator_id_started_at",
                    table: "weld_runs",
                    columns: new[] { "operator_id", "started_at" }
                )
                .Annotation("Npgsql:IndexInclude", new[] { "vessel_id" });

            migrationBuilder
                .CreateIndex(
                    name: "ix_weld_runs_procedure_revision_id_started_at",
                    table: "weld_runs",
                    columns: new[] { "procedure_revision_id", "started_at" }
                )
                .Annotation("Npgsql:IndexInclude", new[] { "vessel_id" });

            migrationBuilder
                .CreateIndex(
                    name: "ix_weld_runs_tool_id_started_at",
                    table: "weld_runs",
                    columns: new[] { "tool_id", "started_at" }
                )
                .Annotation("Npgsql:IndexInclude", new[] { "vessel_id" });

            migrationBuilder
                .CreateIndex(
                    name: "ix_sections_instruments",
                    table: "sections",
                    column: "instruments"
                )
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder
                .CreateIndex(
                    name: "ix_pressure_tests_instruments",
                    table: "pressure_tests",
                    column: "instruments"
                )
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder
                .CreateIndex(
                    name: "ix_leak_tests_instruments",
                    table: "leak_tests",
                    column: "instruments"
                )
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.CreateIndex(
                name: "ix_findings_evidence_id",
                table: "findings",
                column: "evidence_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_production_tests_machine_id_procedure_revision_id_at",
                table: "production_tests",
                columns: new[] { "machine_id", "procedure_revision_id", "at" }
            );

            migrationBuilder.Sql(
                "CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON production_tests FOR EACH ROW EXECUTE FUNCTION refuse_change();"
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "production_tests");

            migrationBuilder.DropIndex(
                name: "ix_weld_runs_machine_id_started_at",
                table: "weld_runs"
            );

            migrationBuilder.DropIndex(
                name: "ix_weld_runs_operator_id_started_at",
                table: "weld_runs"
            );

            migrationBuilder.DropIndex(
                name: "ix_weld_runs_procedure_revision_id_started_at",
                table: "weld_runs"
            );

            migrationBuilder.DropIndex(name: "ix_weld_runs_tool_id_started_at", table: "weld_runs");

            migrationBuilder.DropIndex(name: "ix_sections_instruments", table: "sections");

            migrationBuilder.DropIndex(
                name: "ix_pressure_tests_instruments",
                table: "pressure_tests"
            );

            migrationBuilder.DropIndex(name: "ix_leak_tests_instruments", table: "leak_tests");

            migrationBuilder.DropIndex(name: "ix_findings_evidence_id", table: "findings");

            migrationBuilder.DropColumn(name: "board", table: "findings");

            migrationBuilder.DropColumn(name: "cause", table: "findings");

            migrationBuilder.DropColumn(name: "containments", table: "findings");

            migrationBuilder.DropColumn(name: "planned_repair", table: "findings");

            migrationBuilder.DropColumn(name: "repair", table: "findings");
        }
    }
}
