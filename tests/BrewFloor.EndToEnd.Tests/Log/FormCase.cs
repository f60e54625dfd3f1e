using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>One form in a state of the floor in which it makes sense, and what somebody types into it.</summary>
/// <param name="Make">The kind of tank it is logged on.</param>
/// <param name="Before">What is in the tank's log when the form is opened.</param>
/// <param name="Fill">What is typed and chosen.</param>
internal sealed record FormCase(Func<Guid, string, Tank> Make, Func<Tank, LogEntry[]> Before, Func<Visit, Task> Fill)
{
    /// <summary>A culture of the house is what it is about.</summary>
    public bool IsAboutCulture { get; init; }

    /// <summary>It brings a culture: it hangs on the yeast page.</summary>
    public bool BringsCulture { get; init; }

    /// <summary>An item of the stock is what it is about.</summary>
    public bool IsAboutItem { get; init; }

    /// <summary>The timeline's words, if they aren't those of the kind.</summary>
    public string? Shows { get; init; }
}
