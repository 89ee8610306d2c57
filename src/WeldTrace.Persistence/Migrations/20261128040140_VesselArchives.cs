using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261128040140_VesselArchives")]
    public partial class VesselArchives : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "retention_years",
                table: "sites",
                type: "integer",
                nullable: true
            );

            migrationBuilder.AddColumn<Guid>(
                name: "archive_id",
                table: "process_logs",
                type: "uuid",
                nullable: true
            );

            migrationBuilder.AddColumn<Guid>(
                name: "archive_id",
                table: "attachments",
                type: "uuid",
                nullable: true
            );

            migrationBuilder.CreateTable(
                name: "vessel_archives",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    bundle = table.Column<string>(type: "jsonb", nullable: false),
                    files = table.Column<string>(type: "jsonb", nullable: false),
                    logs = table.Column<string>(type: "jsonb", nullable: false),
                    kept_until = table.Column<DateOnly>(type: "date", nullable: false),
                    rule = table.Column<string>(type: "text", nullable: false),
                    archived_by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_vessel_archives", x => x.id);
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_vessel_archives_vessel_id",
                table: "vessel_archives",
                column: "vessel_id"
            );

            migrationBuilder.Sql(DetachedContents.Up);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(DetachedContents.Down);

            migrationBuilder.DropTable(name: "vessel_archives");

            migrationBuilder.DropColumn(name: "retention_years", table: "sites");

            migrationBuilder.DropColumn(name: "archive_id", table: "process_logs");

            migrationBuilder.DropColumn(name: "archive_id", table: "attachments");
        }
    }
}
