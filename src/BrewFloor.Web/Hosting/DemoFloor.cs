using BrewFloor.DemoSeed;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Account;

namespace BrewFloor.Web.Hosting;

/// <summary>Fills an empty floor with the demo scenario, through the same door as everybody, and prints its sign-ins.</summary>
public sealed class DemoFloor(
    Accounts accounts,
    Inventory inventory,
    HouseKeeping house,
    FloorReader reader,
    FloorLog log,
    Passwords passwords,
    TimeProvider clock
)
{
    private const int LargestGroup = 500;

    /// <returns>False: there is something on this floor already, and it was left alone.</returns>
    public async Task<bool> FillAsync(CancellationToken stop)
    {
        var people = await accounts.AllAsync(stop);
        if (people.Count > 0 || (await reader.InventoryAsync(stop)).Floor.Tanks.Count > 0)
        {
            return false;
        }

        var scenario = DemoScenario.For(clock.GetUtcNow(), TimeZoneInfo.Local);
        await SettleAsync(scenario, stop);
        await TellAsync(scenario, stop);
        return true;
    }

    private async Task SettleAsync(DemoScenario scenario, CancellationToken stop)
    {
        var site = await house.SiteAsync(stop);
        await house.ChangeAsync(
            site with
            {
                Name = scenario.Site.Name,
                Zone = TimeZoneInfo.Local.Id,
                AltitudeM = scenario.Site.Altitude.Meters,
            },
            stop
        );
        Console.WriteLine($"\n{scenario.Site.Name}, a demo. Sign-ins, made anew for this folder:\n");
        foreach (var person in scenario.People)
        {
            var password = Passwords.MakeOne();
            await accounts.AddAsync(
                person.Id,
                person.Name,
                person.Role,
                passwords.Hash(password),
                clock.GetUtcNow(),
                stop
            );
            Console.WriteLine($"    {person.Name, -10} {RoleNames.Of(person.Role), -8} {password}");
        }

        Console.WriteLine();
        var owner = scenario.People.First(person => person.Role is Role.Owner);
        foreach (var tank in scenario.Tanks)
        {
            if (
                await inventory.AddAsync(tank, new Author(owner.Id, Role.Owner), stop) is Edited.Refused(var objections)
            )
            {
                throw new InvalidOperationException($"Demo tank {tank.Code}: {string.Join(", ", objections)}");
            }
        }
    }

    // Handed in by the owner: two years back is further than anybody else may write.
    private async Task TellAsync(DemoScenario scenario, CancellationToken stop)
    {
        var owner = new Author(scenario.People.First(person => person.Role is Role.Owner).Id, Role.Owner);
        var people = scenario.People.ToDictionary(person => person.Id, person => new Author(person.Id, person.Role));
        foreach (var group in scenario.Groups(LargestGroup))
        {
            Listed<Sent> sent =
            [
                .. group.Select(line => new Sent(line.Entry, line.Answer) { LoggedBy = people[line.LoggedBy] }),
            ];
            var appended = await log.AppendAsync(new LogRequest(sent, owner), stop);
            if (appended is not Appended.Stored)
            {
                var first = sent[0].Entry;
                throw new InvalidOperationException(
                    $"The demo's log was refused from {EntryKinds.NameOf(first)} at {first.At:O} on: {Why(appended)}"
                );
            }
        }
    }

    private static string Why(Appended appended) =>
        appended is Appended.Refused(var judged)
            ? string.Join(
                "; ",
                judged.SelectMany(j => j.Verdict.Objections).Select(o => $"{o.Code} {string.Join(", ", o.Numbers)}")
            )
            : appended.ToString()!;
}
