using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Yeast;

/// <summary>Objections that every new culture shares.</summary>
public static class NewYeast
{
    public const string Nothing = "no-yeast";

    /// <summary>Impossible: a culture that is there already, and one of which there is nothing.</summary>
    public static IEnumerable<Objection> Objections(Guid cultureId, YeastAmount amount, Floor before)
    {
        if (before.StateOf(Subject.Culture(cultureId)) is CultureState { Made: { } made })
        {
            yield return Objection.Impossible("culture-already-here", new Number("since", made.At));
        }

        if (amount.IsNothing)
        {
            yield return Objection.Impossible(Nothing);
        }
    }
}
