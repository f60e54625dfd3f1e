using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;

namespace BrewFloor.Web.Log;

/// <summary>Stands for no value where one was refused, whatever its type.</summary>
public readonly record struct Unread
{
    public static implicit operator double?(Unread _) => null;

    public static implicit operator DateOnly?(Unread _) => null;

    public static implicit operator DateTimeOffset?(Unread _) => null;

    public static implicit operator SpecificGravity?(Unread _) => null;

    public static implicit operator CarbonDioxideContent?(Unread _) => null;
}
