using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using Npgsql;

namespace BrewFloor.Store.Items;

/// <summary>What items are called, where they are kept and when more is bought: changed with a version and a history, like every thing.</summary>
public sealed class ItemBook(NpgsqlDataSource database, RulesOnHand rules)
{
    private readonly ThingEdit _edit = new(database, rules);

    /// <param name="item">As it should be, with the version it was read at. Its number and its measure never change.</param>
    public Task<Edited> EditAsync(Item item, Author by, CancellationToken stop) =>
        _edit.WriteAsync(Subject.Item(item.Id), floor => Renew(floor.Item(item.Id).Thing, item, by), by, stop);

    private static Renewal Renew(Item before, Item item, Author by) =>
        ThingEdit.Judge(
            by,
            before.Version,
            item.Version,
            () =>
            {
                var renewed = item with
                {
                    Number = before.Number,
                    Measure = before.Measure,
                    Version = before.Version + 1,
                };
                return new Renewal.Yes(renewed.Version, FloorJson.Of(renewed), things => things.Add(renewed));
            }
        );
}
