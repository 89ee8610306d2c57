using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261126183000_OneOpenConcession")]
    public partial class OneOpenConcession : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // For one step, rule and person, machine or tool; the model knows no index on a part of a JSON column.
            migrationBuilder.Sql(
                """
                CREATE UNIQUE INDEX ix_concessions_one_open
                ON concessions (vessel_id, step_sequence, rule_id, (coalesce("only" ->> 'id', '')))
                WHERE state = 'Asked';
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(name: "ix_concessions_one_open", table: "concessions");
        }
    }
}
