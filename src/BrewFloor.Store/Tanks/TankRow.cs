using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Tanks;

/// <summary>What a tank is. People edit it; what happened to it is in the log.</summary>
/// <remarks>The sizes that constraints look at are worked out by the database from <see cref="Thing"/>, so nothing stands twice.</remarks>
internal sealed class TankRow
{
    public required Guid Id { get; init; }

    public required string Code { get; init; }

    /// <summary>Raised by every edit; who edits says which one was on the page.</summary>
    public required int Version { get; set; }

    public required string Thing { get; set; }

    public double WorkingL { get; private set; }

    public bool IsRetired { get; private set; }

    public Tank ToTank() => ToTank(Thing, Version);

    public static Tank ToTank(string thing, int version) => FloorJson.Read<Tank>(thing) with { Version = version };
}

/// <summary>From when to when a batch was in a tank: two at once are refused by the table itself.</summary>
internal sealed class TankOccupancyRow
{
    public long Id { get; init; }

    public required Guid TankId { get; init; }

    public required Guid BatchId { get; init; }

    /// <summary>The start included, the end not.</summary>
    public required NpgsqlTypes.NpgsqlRange<DateTime> During { get; init; }
}

internal sealed class TankMapping : IEntityTypeConfiguration<TankRow>, IEntityTypeConfiguration<TankOccupancyRow>
{
    public void Configure(EntityTypeBuilder<TankRow> builder)
    {
        builder.ToTable(
            "tanks",
            table =>
            {
                table.HasCheckConstraint("ck_tanks_working_is_something", "working_l > 0");
                table.HasCheckConstraint("ck_tanks_code_is_typed", "code ~ '^[A-Z0-9-]{1,6}$'");
                table.HasCheckConstraint(
                    "ck_tanks_thing_is_the_tank",
                    "thing ->> 'code' = code AND thing ->> 'id' = id::text"
                );
            }
        );
        builder.HasIndex(row => row.Code).IsUnique();
        builder.Property(row => row.Version).IsConcurrencyToken();
        builder.Property(row => row.Thing).HasColumnType("jsonb");
        builder
            .Property(row => row.WorkingL)
            .HasComputedColumnSql("(thing ->> 'working_l')::double precision", stored: true);
        builder.Property(row => row.IsRetired).HasComputedColumnSql("thing ? 'retired_on'", stored: true);
    }

    public void Configure(EntityTypeBuilder<TankOccupancyRow> builder)
    {
        builder.ToTable("tank_occupancies");
        builder.HasKey(row => row.Id);
        builder.HasOne<TankRow>().WithMany().HasForeignKey(row => row.TankId).OnDelete(DeleteBehavior.Restrict);
        builder
            .HasOne<Batches.BatchRow>()
            .WithMany()
            .HasForeignKey(row => row.BatchId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}

/// <summary>How a tank, a batch, a culture or the house rules were, after each change.</summary>
internal sealed class ThingChangeRow
{
    /// <summary>tank, batch, culture, house-rules, site.</summary>
    public required string Kind { get; init; }

    public required Guid ThingId { get; init; }

    public required int Version { get; init; }

    public required DateTimeOffset At { get; init; }

    public required Guid By { get; init; }

    public required string Thing { get; init; }
}

internal sealed class ThingChangeMapping : IEntityTypeConfiguration<ThingChangeRow>
{
    public void Configure(EntityTypeBuilder<ThingChangeRow> builder)
    {
        builder.ToTable("thing_changes");
        builder.HasKey(row => new
        {
            row.Kind,
            row.ThingId,
            row.Version,
        });
        builder.Property(row => row.Thing).HasColumnType("jsonb");
    }
}
