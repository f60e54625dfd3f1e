namespace BrewFloor.Store.Log;

/// <summary>What is waited for, in which order and for how long. A test that wants to see what a part is for leaves it out.</summary>
internal sealed record Locks
{
    /// <summary>A row is locked without its key, so that rows that refer to it can still be written meanwhile.</summary>
    public const string OfRow = "FOR NO KEY UPDATE";

    /// <summary>Held to the end of the transaction, so that no number becomes visible before a smaller one.</summary>
    public const string OfHead = "SELECT pg_advisory_xact_lock(1114793335)";

    public static readonly Locks Usual = new();

    /// <summary>Only looks.</summary>
    public static readonly Locks None = new() { Rows = "" };

    /// <summary>By id: two requests cannot hold what the other waits for.</summary>
    public string Rows { get; init; } = $"ORDER BY id {OfRow}";

    public string Head { get; init; } = OfHead;

    /// <summary>How long anybody waits for a lock before being told to come again.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>When an entry was recorded: asked once the locks are there, so that who waited is not dated before who went first.</summary>
    public string Clock { get; init; } = "SELECT clock_timestamp()";

    /// <summary>How often a request is tried that others got in the way of.</summary>
    public int Tries { get; init; } = 4; // the first and three more

    public string Limit => $"SET LOCAL lock_timeout = {(int)Patience.TotalMilliseconds}";
}
