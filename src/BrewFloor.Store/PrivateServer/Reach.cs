namespace BrewFloor.Store.PrivateServer;

/// <summary>Whether the database could be reached when it was last asked.</summary>
/// <param name="IsReachable">It answered.</param>
/// <param name="LastAt">When it last answered; <see langword="null"/>: never since the app started.</param>
/// <param name="Problem">Why it did not, in words for whoever runs the app.</param>
public sealed record Reach(bool IsReachable, DateTimeOffset? LastAt, string? Problem);
