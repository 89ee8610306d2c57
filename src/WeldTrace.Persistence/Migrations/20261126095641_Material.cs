using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126095641_Material")]
    public partial class Material : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "required_document",
                table: "sites",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "document",
                table: "material_lots",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "results",
                table: "material_lots",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "components",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    serial = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    part_kind = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_number = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    cast_number = table.Column<string>(type: "text", nullable: false),
                    made_by = table.Column<string>(type: "text", nullable: false),
                    made_on = table.Column<DateOnly>(type: "date", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: true),
                    vessel_serial = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: true
                    ),
                    scrapped_because = table.Column<string>(type: "text", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_components", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "heat_treatments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    furnace = table.Column<string>(type: "text", nullable: false),
                    on = table.Column<DateOnly>(type: "date", nullable: false),
                    asked = table.Column<string>(type: "jsonb", nullable: false),
                    kept = table.Column<string>(type: "jsonb", nullable: false),
                    chart_sha256 = table.Column<string>(
                        type: "character varying(64)",
                        maxLength: 64,
                        nullable: false
                    ),
                    parts = table.Column<string>(type: "jsonb", nullable: false),
                    is_kept = table.Column<bool>(type: "boolean", nullable: false),
                    verdict = table.Column<string>(type: "text", nullable: false),
                    entered_by_name = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_heat_treatments", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "joint_cleanings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    joint_code = table.Column<string>(type: "text", nullable: false),
                    cleaned_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    method = table.Column<string>(
                        type: "character varying(200)",
                        maxLength: 200,
                        nullable: false
                    ),
                    cleaned_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    cleaned_by_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_joint_cleanings", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "joint_fit_ups",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    joint_code = table.Column<string>(type: "text", nullable: false),
                    measured_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    gap = table.Column<string>(type: "jsonb", nullable: false),
                    mismatch = table.Column<string>(type: "jsonb", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_mark = table.Column<string>(type: "text", nullable: false),
                    uncertainty = table.Column<string>(type: "jsonb", nullable: false),
                    remark = table.Column<string>(type: "text", nullable: false),
                    measured_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    measured_by_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_joint_fit_ups", x => x.id);
                }
            );

            migrationBuilder
                .CreateIndex(name: "ix_vessels_components", table: "vessels", column: "components")
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.CreateIndex(
                name: "ix_components_lot_id",
                table: "components",
                column: "lot_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_components_serial",
                table: "components",
                column: "serial",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_components_vessel_id",
                table: "components",
                column: "vessel_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_heat_treatments_number",
                table: "heat_treatments",
                column: "number",
                unique: true
            );

            migrationBuilder
                .CreateIndex(
                    name: "ix_heat_treatments_parts",
                    table: "heat_treatments",
                    column: "parts"
                )
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.CreateIndex(
                name: "ix_joint_cleanings_vessel_id",
                table: "joint_cleanings",
                column: "vessel_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_joint_fit_ups_instrument_id",
                table: "joint_fit_ups",
                column: "instrument_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_joint_fit_ups_vessel_id",
                table: "joint_fit_ups",
                column: "vessel_id"
            );
            migrationBuilder.Sql(
                """
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON heat_treatments
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON joint_cleanings
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON joint_fit_ups
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "components");

            migrationBuilder.DropTable(name: "heat_treatments");

            migrationBuilder.DropTable(name: "joint_cleanings");

            migrationBuilder.DropTable(name: "joint_fit_ups");

            migrationBuilder.DropIndex(name: "ix_vessels_components", table: "vessels");

            migrationBuilder.DropColumn(name: "required_document", table: "sites");

            migrationBuilder.DropColumn(name: "document", table: "material_lots");

            migrationBuilder.DropColumn(name: "results", table: "material_lots");
        }
    }
}
