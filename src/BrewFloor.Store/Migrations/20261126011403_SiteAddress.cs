using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace BrewFloor.Store.Migrations
{
    /// <inheritdoc />
    public partial class SiteAddress : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(name: "address", table: "site", type: "text", nullable: true);

            migrationBuilder.AddCheckConstraint(
                name: "ck_site_address_opens_in_a_browser",
                table: "site",
                sql: "address ~ '^https?://[^/]'"
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(name: "ck_site_address_opens_in_a_browser", table: "site");

            migrationBuilder.DropColumn(name: "address", table: "site");
        }
    }
}
