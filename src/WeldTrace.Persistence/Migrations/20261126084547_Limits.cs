using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126084547_Limits")]
    public partial class Limits : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "limit_tables",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(
                        type: "character varying(30)",
                        maxLength: 30,
                        nullable: false
                    ),
                    edition = table.Column<int>(type: "integer", nullable: false),
                    covers = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    text = table.Column<string>(type: "jsonb", nullable: false),
                    evidence = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    change_reason = table.Column<string>(
                        type: "character varying(120)",
                        maxLength: 120,
                        nullable: false
                    ),
                    own_check = table.Column<string>(type: "jsonb", nullable: true),
                    superseded_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_limit_tables", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_limit_tables_code_edition",
                table: "limit_tables",
                columns: new[] { "code", "edition" },
                unique: true
            );
            migrationBuilder.Sql(
                """
                CREATE TRIGGER frozen BEFORE UPDATE ON limit_tables
                    FOR EACH ROW WHEN ((OLD.code, OLD.edition, OLD.covers, OLD.text, OLD.evidence)
                        IS DISTINCT FROM (NEW.code, NEW.edition, NEW.covers, NEW.text, NEW.evidence))
                    EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER kept BEFORE DELETE ON limit_tables FOR EACH ROW EXECUTE FUNCTION refuse_change();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "limit_tables");
        }
    }
}
