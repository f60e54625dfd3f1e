using BrewFloor.Domain.Items;
using BrewFloor.Store.Log;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Items;

/// <summary>What an item is; its number is given by the log when the entry that brings it is written.</summary>
internal sealed class ItemRow
{
    public required Guid Id { get; init; }

    public required int Number { get; init; }

    public required int Version { get; set; }

    public required string Thing { get; set; }

    public static Item ToItem(string thing, int number, int version) =>
        FloorJson.Read<Item>(thing) with
        {
            Number = number,
            Version = version,
        };
}

internal sealed class ItemMapping : IEntityTypeConfiguration<ItemRow>
{
    public void Configure(EntityTypeBuilder<ItemRow> builder)
    {
        builder.ToTable("items", table => table.HasCheckConstraint("ck_items_number_is_given", "number > 0"));
        builder.HasIndex(row => row.Number).IsUnique();
        builder.Property(row => row.Version).IsConcurrencyToken();
        builder.Property(row => row.Thing).HasColumnType("jsonb");
    }
}
