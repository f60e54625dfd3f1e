using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using Npgsql;

namespace BrewFloor.Store.Yeast;

/// <summary>What cultures are called, and what their packs say: changed with a version and a history, like every thing.</summary>
public sealed class CultureBook(NpgsqlDataSource database, RulesOnHand rules)
{
    private readonly ThingEdit _edit = new(database, rules);

    /// <param name="culture">As it should be, with the version it was read at. Its number never changes.</param>
    public Task<Edited> EditAsync(Culture culture, Author by, CancellationToken stop) =>
        _edit.WriteAsync(
            Subject.Culture(culture.Id),
            floor => Renew(floor.Culture(culture.Id).Thing, culture, by),
            by,
            stop
        );

    private static Renewal Renew(Culture before, Culture culture, Author by) =>
        ThingEdit.Judge(
            by,
            before.Version,
            culture.Version,
            () =>
            {
                var renewed = culture with { Number = before.Number, Version = before.Version + 1 };
                return new Renewal.Yes(renewed.Version, FloorJson.Of(renewed), things => things.Add(renewed));
            }
        );
}
