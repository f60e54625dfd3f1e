using BrewFloor.Domain.People;

namespace BrewFloor.DemoSeed;

/// <summary>Somebody of the club. All of them are invented.</summary>
public sealed record DemoPerson(Guid Id, string Name, Role Role);

/// <summary>The five of the club.</summary>
internal sealed class Crew(Dice dice)
{
    public DemoPerson Maive { get; } = new(dice.Id("Maive"), "Maive", Role.Owner);

    public DemoPerson Torvin { get; } = new(dice.Id("Torvin"), "Torvin", Role.Brewer);

    public DemoPerson Elka { get; } = new(dice.Id("Elka"), "Elka", Role.Brewer);

    public DemoPerson Rasco { get; } = new(dice.Id("Rasco"), "Rasco", Role.Helper);

    public DemoPerson Junia { get; } = new(dice.Id("Junia"), "Junia", Role.Viewer);

    public DemoPerson[] All => [Maive, Torvin, Elka, Rasco, Junia];

    /// <summary>Who brews that day: the two brewers in turn, now and then the owner.</summary>
    public DemoPerson Brews(int day) =>
        Dice.Below($"brews {day}", 7) switch
        {
            0 => Maive,
            < 4 => Torvin,
            _ => Elka,
        };

    /// <summary>Who cleans or reads that day: mostly the helper.</summary>
    public DemoPerson Helps(int day) =>
        Dice.Below($"helps {day}", 6) switch
        {
            0 => Torvin,
            1 => Elka,
            _ => Rasco,
        };
}
