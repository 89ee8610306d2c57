using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    public partial class SharedTablets : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "badge_sha256",
                table: "accounts",
                type: "character(64)",
                fixedLength: true,
                maxLength: 64,
                nullable: true
            );

            migrationBuilder.AddColumn<Guid>(
                name: "tablet_id",
                table: "account_sessions",
                type: "uuid",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "shared_tablets",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(
                        type: "character varying(60)",
                        maxLength: 60,
                        nullable: false
                    ),
                    token_sha256 = table.Column<string>(
                        type: "character(64)",
                        fixedLength: true,
                        maxLength: 64,
                        nullable: false
                    ),
                    registered_by = table.Column<string>(type: "text", nullable: false),
                    registered_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    withdrawn_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shared_tablets", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "account_pins",
                columns: table => new
                {
                    account_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tablet_id = table.Column<Guid>(type: "uuid", nullable: false),
                    pin_hash = table.Column<string>(type: "text", nullable: false),
                    set_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    wrong_in_a_row = table.Column<int>(type: "integer", nullable: false),
                    held_until = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_pins", x => new { x.account_id, x.tablet_id });
                    table.ForeignKey(
                        name: "fk_account_pins_accounts_account_id",
                        column: x => x.account_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade
                    );
                    table.ForeignKey(
                        name: "fk_account_pins_shared_tablets_tablet_id",
                        column: x => x.tablet_id,
                        principalTable: "shared_tablets",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_accounts_badge_sha256",
                table: "accounts",
                column: "badge_sha256",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_account_sessions_tablet_id",
                table: "account_sessions",
                column: "tablet_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_account_pins_tablet_id",
                table: "account_pins",
                column: "tablet_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_shared_tablets_token_sha256",
                table: "shared_tablets",
                column: "token_sha256",
                unique: true
            );

            migrationBuilder.AddForeignKey(
                name: "fk_account_sessions_shared_tablets_tablet_id",
                table: "account_sessions",
                column: "tablet_id",
                principalTable: "shared_tablets",
                principalColumn: "id"
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_account_sessions_shared_tablets_tablet_id",
                table: "account_sessions"
            );

            migrationBuilder.DropTable(name: "account_pins");

            migrationBuilder.DropTable(name: "shared_tablets");

            migrationBuilder.DropIndex(name: "ix_accounts_badge_sha256", table: "accounts");

            migrationBuilder.DropIndex(
                name: "ix_account_sessions_tablet_id",
                table: "account_sessions"
            );

            migrationBuilder.DropColumn(name: "badge_sha256", table: "accounts");

            migrationBuilder.DropColumn(name: "tablet_id", table: "account_sessions");
        }
    }
}
