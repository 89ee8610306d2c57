using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126170159_Lots")]
    public partial class Lots : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "lot_id",
                table: "vessels",
                type: "uuid",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "sample",
                table: "vessels",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "production_lots",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    design_id = table.Column<Guid>(type: "uuid", nullable: false),
                    design_label = table.Column<string>(type: "text", nullable: false),
                    rule = table.Column<string>(type: "jsonb", nullable: false),
                    plan = table.Column<string>(type: "jsonb", nullable: false),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    vessels = table.Column<string>(type: "jsonb", nullable: false),
                    samples = table.Column<string>(type: "jsonb", nullable: false),
                    sampled_by = table.Column<string>(type: "text", nullable: true),
                    sampled_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    results = table.Column<string>(type: "jsonb", nullable: false),
                    acceptance = table.Column<string>(type: "jsonb", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_production_lots", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_vessels_lot_id",
                table: "vessels",
                column: "lot_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_production_lots_design_id",
                table: "production_lots",
                column: "design_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_production_lots_number",
                table: "production_lots",
                column: "number",
                unique: true
            );

            // A lot is never deleted, never changed once accepted, and its samples stand once they are chosen.
            migrationBuilder.Sql(
                """
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON production_lots
                    FOR EACH ROW WHEN (OLD.state = 'Accepted') EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER frozen BEFORE UPDATE ON production_lots
                    FOR EACH ROW WHEN ((OLD.number, OLD.design_id, OLD.rule, OLD.plan, OLD.vessels)
                        IS DISTINCT FROM (NEW.number, NEW.design_id, NEW.rule, NEW.plan, NEW.vessels)
                        OR (OLD.sampled_at IS NOT NULL AND OLD.samples IS DISTINCT FROM NEW.samples))
                    EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER kept BEFORE DELETE ON production_lots FOR EACH ROW EXECUTE FUNCTION refuse_change();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "production_lots");

            migrationBuilder.DropIndex(name: "ix_vessels_lot_id", table: "vessels");

            migrationBuilder.DropColumn(name: "lot_id", table: "vessels");

            migrationBuilder.DropColumn(name: "sample", table: "vessels");
        }
    }
}
