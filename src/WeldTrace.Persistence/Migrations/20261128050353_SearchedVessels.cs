using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    public partial class SearchedVessels : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "next_step_label",
                table: "vessels",
                type: "text",
                nullable: true,
                computedColumnSql: "((jsonb_path_query_first(steps, '$[*] ? (@.state != \"passed\" && @.state != \"waived\")')) ->> 'sequence') || ' ' || ((jsonb_path_query_first(steps, '$[*] ? (@.state != \"passed\" && @.state != \"waived\")')) ->> 'title')",
                stored: true
            );

            migrationBuilder
                .CreateIndex(
                    name: "ix_weld_runs_started_at",
                    table: "weld_runs",
                    column: "started_at"
                )
                .Annotation("Npgsql:IndexInclude", new[] { "vessel_id" });

            migrationBuilder
                .CreateIndex(name: "ix_signatures_vessels", table: "signatures", column: "vessels")
                .Annotation("Npgsql:IndexMethod", "gin")
                .Annotation("Npgsql:IndexOperators", new[] { "jsonb_path_ops" })
                .Annotation("Npgsql:StorageParameter:fastupdate", false);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(name: "ix_weld_runs_started_at", table: "weld_runs");

            migrationBuilder.DropIndex(name: "ix_signatures_vessels", table: "signatures");

            migrationBuilder.DropColumn(name: "next_step_label", table: "vessels");
        }
    }
}
