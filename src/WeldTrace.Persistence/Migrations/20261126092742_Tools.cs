using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126092742_Tools")]
    public partial class Tools : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "end",
                table: "tools",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "held_because",
                table: "tools",
                type: "text",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "inspections",
                table: "tools",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "parts",
                table: "tools",
                type: "jsonb",
                nullable: true
            );

            migrationBuilder.AddColumn<double>(
                name: "shoulder_life_limit_m",
                table: "tools",
                type: "double precision",
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "life_evidence_sha256",
                table: "tool_designs",
                type: "character varying(64)",
                maxLength: 64,
                nullable: true
            );

            migrationBuilder.AddColumn<string>(
                name: "upkeep",
                table: "tool_designs",
                type: "jsonb",
                nullable: true
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "end", table: "tools");

            migrationBuilder.DropColumn(name: "held_because", table: "tools");

            migrationBuilder.DropColumn(name: "inspections", table: "tools");

            migrationBuilder.DropColumn(name: "parts", table: "tools");

            migrationBuilder.DropColumn(name: "shoulder_life_limit_m", table: "tools");

            migrationBuilder.DropColumn(name: "life_evidence_sha256", table: "tool_designs");

            migrationBuilder.DropColumn(name: "upkeep", table: "tool_designs");
        }
    }
}
