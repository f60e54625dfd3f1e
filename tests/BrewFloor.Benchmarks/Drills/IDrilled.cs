namespace BrewFloor.Benchmarks.Drills;

/// <summary>What a drill came to, for the page of the docs and the console.</summary>
internal interface IDrilled
{
    bool IsPassed { get; }

    /// <summary>Of what was left to chance; 0: nothing was.</summary>
    int Seed { get; }

    /// <summary>Answers no writer should get.</summary>
    IReadOnlyCollection<string> Wrong { get; }

    /// <summary>What else was looked at, in words.</summary>
    IReadOnlyList<string> Also { get; }

    /// <summary>What was counted and measured.</summary>
    IEnumerable<(string What, string Found)> Rows { get; }
}
