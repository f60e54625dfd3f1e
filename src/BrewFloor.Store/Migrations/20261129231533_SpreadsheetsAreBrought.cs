using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace BrewFloor.Store.Migrations
{
    /// <inheritdoc />
    public partial class SpreadsheetsAreBrought : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "spreadsheets",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    uploaded_by = table.Column<Guid>(type: "uuid", nullable: false),
                    uploaded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    cells = table.Column<string>(type: "jsonb", nullable: true),
                    matching = table.Column<string>(type: "jsonb", nullable: true),
                    imported_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    imported_by = table.Column<Guid>(type: "uuid", nullable: true),
                    entries = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    tanks = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    others = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    undone_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    undone_by = table.Column<Guid>(type: "uuid", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_spreadsheets", x => x.id);
                    table.CheckConstraint("ck_spreadsheets_kind_is_known", "kind IN ('tanks', 'batches', 'cultures')");
                    table.CheckConstraint(
                        "ck_spreadsheets_what_is_imported_says_by_whom",
                        "(imported_at IS NULL) = (imported_by IS NULL)"
                    );
                    table.CheckConstraint(
                        "ck_spreadsheets_what_is_undone_was_imported",
                        "undone_at IS NULL OR imported_at IS NOT NULL"
                    );
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_spreadsheets_uploaded_at",
                table: "spreadsheets",
                column: "uploaded_at"
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "spreadsheets");
        }
    }
}
