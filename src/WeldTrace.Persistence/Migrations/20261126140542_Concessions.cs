using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126140542_Concessions")]
    public partial class Concessions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "concessions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    step_sequence = table.Column<int>(type: "integer", nullable: false),
                    rule_id = table.Column<string>(
                        type: "character varying(10)",
                        maxLength: 10,
                        nullable: false
                    ),
                    rule_title = table.Column<string>(type: "text", nullable: false),
                    forbids = table.Column<string>(type: "text", nullable: false),
                    only = table.Column<string>(type: "jsonb", nullable: true),
                    reason = table.Column<string>(
                        type: "character varying(1000)",
                        maxLength: 1000,
                        nullable: false
                    ),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    asked_by = table.Column<string>(type: "jsonb", nullable: false),
                    decided_by = table.Column<string>(type: "jsonb", nullable: true),
                    declined_because = table.Column<string>(
                        type: "character varying(1000)",
                        maxLength: 1000,
                        nullable: true
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_concessions", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_concessions_vessel_id",
                table: "concessions",
                column: "vessel_id"
            );
            migrationBuilder.Sql(
                """
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON concessions
                    FOR EACH ROW WHEN (OLD.state <> 'Asked') EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER frozen BEFORE UPDATE ON concessions
                    FOR EACH ROW WHEN ((OLD.vessel_id, OLD.step_sequence, OLD.rule_id, OLD.forbids, OLD."only", OLD.reason, OLD.asked_by)
                        IS DISTINCT FROM (NEW.vessel_id, NEW.step_sequence, NEW.rule_id, NEW.forbids, NEW."only", NEW.reason, NEW.asked_by))
                    EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER kept BEFORE DELETE ON concessions FOR EACH ROW EXECUTE FUNCTION refuse_change();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "concessions");
        }
    }
}
