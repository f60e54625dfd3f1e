using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Yeast;

/// <summary>Objections that every new culture shares.</summary>
public static class NewYeast
{
    /// <summary>Impossible: a culture of which there is nothing.</summary>
    public static IEnumerable<Objection> Objections(YeastAmount amount)
    {
        if (amount.IsNothing)
        {
            yield return Objection.Impossible("no-yeast");
        }
    }
}
