using BrewFloor.Store.Batches;
using BrewFloor.Store.House;
using BrewFloor.Store.Items;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Yeast;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace BrewFloor.Store;

/// <summary>The tables of one club. What happened is written by <see cref="FloorLog"/> alone.</summary>
public sealed class FloorDb(DbContextOptions<FloorDb> options) : DbContext(options), IDataProtectionKeyContext
{
    /// <summary>The keys that cookies and forms are signed with, the same for every instance; sealed by a secret kept elsewhere.</summary>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    internal DbSet<TankRow> Tanks => Set<TankRow>();

    internal DbSet<BatchRow> Batches => Set<BatchRow>();

    internal DbSet<CultureRow> Cultures => Set<CultureRow>();

    internal DbSet<ItemRow> Items => Set<ItemRow>();

    internal DbSet<ThingChangeRow> ThingChanges => Set<ThingChangeRow>();

    internal DbSet<PersonRow> People => Set<PersonRow>();

    internal DbSet<TokenRow> Tokens => Set<TokenRow>();

    internal DbSet<HouseRulesRow> HouseRules => Set<HouseRulesRow>();

    internal DbSet<SiteRow> Sites => Set<SiteRow>();

    internal DbSet<EntryRow> Entries => Set<EntryRow>();

    internal DbSet<EntrySubjectRow> EntrySubjects => Set<EntrySubjectRow>();

    internal DbSet<StateRow> States => Set<StateRow>();

    internal DbSet<JobRow> Jobs => Set<JobRow>();

    internal DbSet<SeenAfterwardsRow> SeenAfterwards => Set<SeenAfterwardsRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.HasPostgresExtension("btree_gist");
        modelBuilder.HasSequence("entry_seq");
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(FloorDb).Assembly);
    }
}
