using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace BrewFloor.Store.Migrations
{
    /// <inheritdoc />
    public partial class BackupsAreKnown : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "backups",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    file = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<long>(type: "bigint", nullable: true),
                    proven_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    problem = table.Column<string>(type: "text", nullable: true),
                    is_nightly = table.Column<bool>(type: "boolean", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_backups", x => x.id);
                    table.CheckConstraint(
                        "ck_backups_what_is_not_proven_says_why",
                        "(proven_at IS NULL) = (problem IS NOT NULL)"
                    );
                    table.CheckConstraint(
                        "ck_backups_what_is_proven_was_made",
                        "proven_at IS NULL OR bytes IS NOT NULL"
                    );
                }
            );

            migrationBuilder.CreateIndex(name: "ix_backups_at", table: "backups", column: "at");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "backups");
        }
    }
}
