using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126091033_Qualifications")]
    public partial class Qualifications : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "qualified",
                table: "procedure_revisions",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "qualifications",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(30)",
                        maxLength: 30,
                        nullable: false
                    ),
                    procedure_revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    procedure_number = table.Column<string>(
                        type: "character varying(30)",
                        maxLength: 30,
                        nullable: false
                    ),
                    procedure_label = table.Column<string>(type: "text", nullable: false),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    several_passes = table.Column<bool>(type: "boolean", nullable: false),
                    plan = table.Column<string>(type: "jsonb", nullable: false),
                    planned_by_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    range = table.Column<string>(type: "jsonb", nullable: true),
                    closed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    abandoned_because = table.Column<string>(
                        type: "character varying(400)",
                        maxLength: 400,
                        nullable: true
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_qualifications", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "specimen_tests",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    qualification_id = table.Column<Guid>(type: "uuid", nullable: false),
                    qualification_number = table.Column<string>(type: "text", nullable: false),
                    piece_id = table.Column<Guid>(type: "uuid", nullable: false),
                    planned_id = table.Column<string>(type: "text", nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    test = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    place = table.Column<string>(type: "text", nullable: false),
                    header = table.Column<string>(type: "jsonb", nullable: false),
                    entry = table.Column<string>(type: "jsonb", nullable: false),
                    instrument = table.Column<string>(type: "jsonb", nullable: true),
                    file_sha256 = table.Column<string>(
                        type: "character varying(64)",
                        maxLength: 64,
                        nullable: true
                    ),
                    verdict = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    verdict_sentence = table.Column<string>(type: "text", nullable: false),
                    tester_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tester_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    signed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_specimen_tests", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "test_pieces",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    qualification_id = table.Column<Guid>(type: "uuid", nullable: false),
                    qualification_number = table.Column<string>(type: "text", nullable: false),
                    mark = table.Column<string>(type: "text", nullable: false),
                    procedure_revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lots = table.Column<string>(type: "jsonb", nullable: false),
                    machine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    machine_name = table.Column<string>(type: "text", nullable: false),
                    tool_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tool_mark = table.Column<string>(type: "text", nullable: false),
                    operator_id = table.Column<Guid>(type: "uuid", nullable: false),
                    operator_name = table.Column<string>(type: "text", nullable: false),
                    gate = table.Column<string>(type: "jsonb", nullable: false),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    started_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    travelled_m = table.Column<double>(type: "double precision", nullable: true),
                    log = table.Column<string>(type: "jsonb", nullable: true),
                    remark = table.Column<string>(
                        type: "character varying(1000)",
                        maxLength: 1000,
                        nullable: true
                    ),
                    signed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_test_pieces", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_qualifications_number",
                table: "qualifications",
                column: "number",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_qualifications_procedure_number",
                table: "qualifications",
                column: "procedure_number"
            );

            migrationBuilder.CreateIndex(
                name: "ix_qualifications_procedure_revision_id",
                table: "qualifications",
                column: "procedure_revision_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_specimen_tests_piece_id_planned_id_attempt",
                table: "specimen_tests",
                columns: new[] { "piece_id", "planned_id", "attempt" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_specimen_tests_qualification_id",
                table: "specimen_tests",
                column: "qualification_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_test_pieces_machine_id",
                table: "test_pieces",
                column: "machine_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_test_pieces_one_welding",
                table: "test_pieces",
                column: "qualification_id",
                unique: true,
                filter: "state = 'Welding'"
            );

            migrationBuilder.CreateIndex(
                name: "ix_test_pieces_qualification_id_mark",
                table: "test_pieces",
                columns: new[] { "qualification_id", "mark" }
            );

            migrationBuilder.CreateIndex(
                name: "ix_test_pieces_tool_id",
                table: "test_pieces",
                column: "tool_id"
            );
            migrationBuilder.Sql(
                """
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON qualifications
                    FOR EACH ROW WHEN (OLD.state <> 'Open') EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER frozen BEFORE UPDATE ON qualifications
                    FOR EACH ROW WHEN ((OLD.number, OLD.plan, OLD.procedure_revision_id)
                        IS DISTINCT FROM (NEW.number, NEW.plan, NEW.procedure_revision_id))
                    EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER kept BEFORE DELETE ON qualifications FOR EACH ROW EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER qualified_once BEFORE UPDATE ON procedure_revisions
                    FOR EACH ROW WHEN (OLD.qualified IS NOT NULL AND OLD.qualified IS DISTINCT FROM NEW.qualified)
                    EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON test_pieces
                    FOR EACH ROW WHEN (OLD.signed_at IS NOT NULL) EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON specimen_tests
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "qualifications");

            migrationBuilder.DropTable(name: "specimen_tests");

            migrationBuilder.DropTable(name: "test_pieces");

            migrationBuilder.DropColumn(name: "qualified", table: "procedure_revisions");
        }
    }
}
