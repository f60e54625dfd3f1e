using BrewFloor.Domain.Batches;
using BrewFloor.Store.Log;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Batches;

/// <summary>What a batch is; its number is given by the log when the entry that brings it is written.</summary>
internal sealed class BatchRow
{
    public required Guid Id { get; init; }

    public required int Number { get; init; }

    public required int Version { get; set; }

    public required string Thing { get; set; }

    public static Batch ToBatch(string thing, int number, int version) =>
        FloorJson.Read<Batch>(thing) with
        {
            Number = number,
            Version = version,
        };
}

internal sealed class BatchMapping : IEntityTypeConfiguration<BatchRow>
{
    public void Configure(EntityTypeBuilder<BatchRow> builder)
    {
        builder.ToTable("batches", table => table.HasCheckConstraint("ck_batches_number_is_given", "number > 0"));
        builder.HasIndex(row => row.Number).IsUnique();
        builder.Property(row => row.Version).IsConcurrencyToken();
        builder.Property(row => row.Thing).HasColumnType("jsonb");
    }
}
