using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.House;

/// <summary>The house rules, one row for each version; the highest counts.</summary>
internal sealed class HouseRulesRow
{
    public required int Version { get; init; }

    public required string Rules { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>Null: what the house began with.</summary>
    public Guid? By { get; init; }
}

/// <summary>Where the floor is. One row.</summary>
internal sealed class SiteRow
{
    public required int Id { get; init; }

    public required string Name { get; set; }

    /// <summary>An IANA name.</summary>
    public required string Zone { get; set; }

    public required double AltitudeM { get; set; }

    /// <summary>Where browsers open it: labels lead there. Null: nobody has said yet.</summary>
    public string? Address { get; set; }

    public required int Version { get; set; }
}

internal sealed class HouseMapping : IEntityTypeConfiguration<HouseRulesRow>, IEntityTypeConfiguration<SiteRow>
{
    public void Configure(EntityTypeBuilder<HouseRulesRow> builder)
    {
        builder.ToTable("house_rules");
        builder.HasKey(row => row.Version);
        builder.Property(row => row.Version).ValueGeneratedNever();
        builder.Property(row => row.Rules).HasColumnType("jsonb");
    }

    public void Configure(EntityTypeBuilder<SiteRow> builder)
    {
        builder.ToTable(
            "site",
            table =>
            {
                table.HasCheckConstraint("ck_site_is_one", "id = 1");
                table.HasCheckConstraint("ck_site_altitude_is_on_earth", "altitude_m BETWEEN -500 AND 6000");
                table.HasCheckConstraint("ck_site_address_opens_in_a_browser", "address ~ '^https?://[^/]'");
            }
        );
        builder.Property(row => row.Id).ValueGeneratedNever();
        builder.Property(row => row.Version).IsConcurrencyToken();
    }
}
