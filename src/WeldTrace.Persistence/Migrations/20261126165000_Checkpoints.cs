using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126165000_Checkpoints")]
    public partial class Checkpoints : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "checkpoints",
                columns: table => new
                {
                    tree_size = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    statement = table.Column<string>(type: "text", nullable: false),
                    signature = table.Column<byte[]>(type: "bytea", nullable: false),
                    public_key_pem = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_checkpoints", x => x.tree_size);
                }
            );

            migrationBuilder.CreateTable(
                name: "signing_keys",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    public_key_pem = table.Column<string>(type: "text", nullable: false),
                    fingerprint = table.Column<string>(
                        type: "character(64)",
                        fixedLength: true,
                        maxLength: 64,
                        nullable: false
                    ),
                    since = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    until = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_signing_keys", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "checkpoint_stamps",
                columns: table => new
                {
                    tree_size = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    service = table.Column<string>(type: "text", nullable: false),
                    token = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_checkpoint_stamps", x => x.tree_size);
                    table.ForeignKey(
                        name: "fk_checkpoint_stamps_checkpoints_tree_size",
                        column: x => x.tree_size,
                        principalTable: "checkpoints",
                        principalColumn: "tree_size",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_signing_keys_fingerprint",
                table: "signing_keys",
                column: "fingerprint",
                unique: true
            );

            migrationBuilder
                .CreateIndex(
                    name: "ix_signing_keys_one_in_use",
                    table: "signing_keys",
                    column: "until",
                    unique: true,
                    filter: "until IS NULL"
                )
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.Sql(
                """
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON checkpoints
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON checkpoint_stamps
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER sealed BEFORE UPDATE ON signing_keys
                    FOR EACH ROW WHEN (OLD.until IS NOT NULL) EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER kept BEFORE DELETE ON signing_keys
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "checkpoint_stamps");

            migrationBuilder.DropTable(name: "signing_keys");

            migrationBuilder.DropTable(name: "checkpoints");
        }
    }
}
