using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Yeast;

/// <summary>What a culture is; its number is given by the log when the entry that brings it is written.</summary>
internal sealed class CultureRow
{
    public required Guid Id { get; init; }

    public required int Number { get; init; }

    public required int Version { get; set; }

    public required string Thing { get; set; }

    public static Culture ToCulture(string thing, int number, int version) =>
        FloorJson.Read<Culture>(thing) with
        {
            Number = number,
            Version = version,
        };
}

internal sealed class CultureMapping : IEntityTypeConfiguration<CultureRow>
{
    public void Configure(EntityTypeBuilder<CultureRow> builder)
    {
        builder.ToTable("cultures", table => table.HasCheckConstraint("ck_cultures_number_is_given", "number > 0"));
        builder.HasIndex(row => row.Number).IsUnique();
        builder.Property(row => row.Version).IsConcurrencyToken();
        builder.Property(row => row.Thing).HasColumnType("jsonb");
    }
}
