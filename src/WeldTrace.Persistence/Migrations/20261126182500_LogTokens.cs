using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126182500_LogTokens")]
    public partial class LogTokens : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "log_columns_revision",
                table: "machines",
                type: "integer",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "log_tokens",
                table: "machines",
                type: "jsonb",
                nullable: true
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "log_columns_revision", table: "machines");

            migrationBuilder.DropColumn(name: "log_tokens", table: "machines");
        }
    }
}
