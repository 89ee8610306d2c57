using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261127145017_SecondFactors")]
    public partial class SecondFactors : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<long>(
                name: "last_code_step",
                table: "accounts",
                type: "bigint",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "account_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(
                        type: "bytea",
                        maxLength: 1023,
                        nullable: false
                    ),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "fk_account_passkeys_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_account_passkeys_user_id",
                table: "account_passkeys",
                column: "user_id"
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "account_passkeys");

            migrationBuilder.DropColumn(name: "last_code_step", table: "accounts");
        }
    }
}
