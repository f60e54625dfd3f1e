using BrewFloor.Brewing;
using BrewFloor.Web.Log;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>Litres typed as such, or as a level that the tank's own sizes turn into litres.</summary>
public static class Amounts
{
    /// <returns>The litres, and the level they came from, if it was a level.</returns>
    public static (Volume Litres, Length? Level) Read(FormReader said, FormFloor floor)
    {
        if (said.LitresOrNone("volume") is { } litres)
        {
            return (litres, null);
        }

        if (said.LevelOrNone("level") is not { } level || floor.Tank is not { } tank)
        {
            said.Refuse("volume", new Refusal("missing", "volume", "", ""));
            return default;
        }

        var held = tank.Strapping.VolumeAt(level);
        if (held.Gives(out var volume))
        {
            return (volume, level);
        }

        said.Refuse("level", held.Refusal);
        return default;
    }
}
