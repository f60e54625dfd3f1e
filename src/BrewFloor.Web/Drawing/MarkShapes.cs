namespace BrewFloor.Web.Drawing;

/// <summary>The marks: 24 by 24, one stroke, told apart by silhouette before colour.</summary>
internal static class MarkShapes
{
    private const string Tank = "M5 4v13l4 4h6l4-4V4";

    // A hole, not a stroke in the colour of the ground: the mark stands on any ground.
    private const string Solid = "fill=\"currentColor\" fill-rule=\"evenodd\" stroke=\"none\"";

    private static readonly Dictionary<MarkKind, string> Shapes = new()
    {
        [MarkKind.Soiled] =
            $"<path d=\"{Tank}\"/><path {Solid} d=\"M8 9c2-2 4 0 3 2s-3 1-3-2zM13 13c2-2 4 0 3 2s-4 1-3-2zM13.5 7.5h2v2h-2z\"/>",
        [MarkKind.Rinsed] = Line($"{Tank}M9.5 7q-2.5 4 0 4.5 2.5-.5 0-4.5zM14.5 12q-2.5 4 0 4.5 2.5-.5 0-4.5z"),
        [MarkKind.Clean] = Line($"{Tank}M15 8l-5 5"),
        [MarkKind.Sanitized] = Line("M5 4v4M19 4v4M5 15v2l4 4h6l4-4v-2M3 8h18v7H3zM9 11.5l2 2 4-4"),
        [MarkKind.Planned] = $"<path stroke-dasharray=\"3 3.4\" d=\"{Tank}\"/>",
        [MarkKind.Filled] = $"<path d=\"{Tank}\"/><path {Solid} d=\"M5 9h14v8l-4 4H9l-4-4z\"/>",
        [MarkKind.Fermenting] =
            "<circle cx=\"8\" cy=\"16\" r=\"4\"/><circle cx=\"16\" cy=\"11\" r=\"3\"/><circle cx=\"10\" cy=\"5\" r=\"2\"/>",
        [MarkKind.Finished] =
            $"<path d=\"{Tank}M7 17h10\"/><path stroke-width=\"2.6\" d=\"M9 8h0M14.5 10h0M10 13h0\"/>",
        [MarkKind.Cold] = Line($"{Tank}M8 9h5M12 13h4M8 17h5"),
        [MarkKind.Packaged] = Line("M7 5h10v15H7zM5.5 9.5h13M5.5 15.5h13M10 5V2.5h4V5"),
        [MarkKind.Discarded] = Line($"{Tank}M2 22L22 2"),
        [MarkKind.Overdue] = $"<path {Solid} d=\"M12 1L23 12 12 23 1 12zM6.5 10.5h11v3h-11z\"/>",
        [MarkKind.Due] = $"<circle {Solid} cx=\"12\" cy=\"12\" r=\"9.5\"/>",
        [MarkKind.Soon] = $"<circle cx=\"12\" cy=\"12\" r=\"9\"/><path {Solid} d=\"M12 3a9 9 0 000 18z\"/>",
        [MarkKind.NothingDue] = Line("M7 12h10"),
        [MarkKind.Stop] = $"<path {Solid} d=\"M8 2h8l6 6v8l-6 6H8l-6-6V8zM6.5 10.5h11v3h-11z\"/>",
        [MarkKind.Caution] = $"<path d=\"M12 3l10 18H2z\"/><path {Solid} d=\"M12 12l3 5.5H9z\"/>",
        [MarkKind.OnThisPhone] = Line("M7 2h10v20H7zM10.5 18.5h3"),
        [MarkKind.OnTheServer] =
            $"<path d=\"M2 6h20v12H2z\"/><path stroke-width=\"2.6\" d=\"M7 10v4M12 10v4M17 10v4\"/>",
        [MarkKind.InABackup] = Line("M2 6h20v12H2zM6 6V2.5h16M2 18v3.5h16"),
        [MarkKind.DoneAnyway] = $"<path d=\"M2 6h13l7 7v5H2z\"/><path {Solid} d=\"M15 6v7h7z\"/>",
        [MarkKind.OutOfService] = Line("M4 4l16 16M20 4L4 20"),
        [MarkKind.FreshPack] = Line("M6 6l2-2.5L10 6l2-2.5L14 6l2-2.5L18 6v15H6zM6 11h12"),
        [MarkKind.InOrder] = Line("M8 3h8M9 3v3L6 9v12h12V9l-3-3V3M6 14h12"),
        [MarkKind.Drifting] =
            $"<path stroke-dasharray=\"3 3\" d=\"M2 6h20\"/><path d=\"M2 8l6 1 5 4 7 7M20 14v6h-6\"/>",
        [MarkKind.Done] = Line("M4 13l5 5L20 6"),
        [MarkKind.Gravity] =
            "<path d=\"M10.5 2h3v9.5a4.5 4.5 0 11-3 0zM3 9h4M17 9h4M10.5 6h3\"/><path stroke-width=\"2.6\" d=\"M12 16h0\"/>",
        [MarkKind.Temperature] = Line("M10 3h4v11a4 4 0 11-4 0zM12 8v9M17 5h3M17 9h3M17 13h3"),
        [MarkKind.Pressure] = Line("M12 3a8.5 8.5 0 110 17 8.5 8.5 0 010-17zM12 11.5L7.5 8M12 20v2.5"),
        [MarkKind.Valve] = Line("M2 8v10l10-5zM22 8v10l-10-5zM12 13V5M8 4h8"),
        [MarkKind.Dump] = Line("M4 3l6 9h4l6-9M12 12v3M12 18q-2 3 0 3.5 2-.5 0-3.5z"),
        [MarkKind.Wash] = "<circle cx=\"12\" cy=\"9.5\" r=\"2.5\"/><path d=\"M12 2v5M8 13l-4 7M12 14v7M16 13l4 7\"/>",
        [MarkKind.Fill] = Line($"{Tank}M12 2v10M8.5 9l3.5 3.5L15.5 9"),
        [MarkKind.Rack] = Line("M2 9v9l2 3h4l2-3V9M14 9v9l2 3h4l2-3V9M6 13V3h12v9M15.5 9.5L18 12l2.5-2.5"),
        [MarkKind.Acid] = Line("M5 4v9a7 7 0 0014 0V4M5 11h14M9 14.5l2 2 4-4"),
        [MarkKind.Pitch] =
            "<path d=\"M8 2l10 6-3 5-10-6zM5 7l10 6\"/><path stroke-width=\"2.6\" d=\"M17 15h0M14 18h0M19 19h0\"/>",
        [MarkKind.Sample] = Line("M8 2h8M9.5 2v18a2.5 2.5 0 005 0V2M9.5 10h5"),
        [MarkKind.Package] = Line("M4 12h4v9H4zM10 12h4v9h-4zM16 12h4v9h-4zM12 2v6M9.5 6L12 8.5 14.5 6"),
        [MarkKind.Note] = Line("M5 3h14v18H5zM8.5 8h7M8.5 12h7M8.5 16h4"),
        [MarkKind.More] = Line("M12 5v14M5 12h14"),
    };

    /// <summary>What stands between the <c>svg</c> tags.</summary>
    public static string Of(MarkKind kind) => Shapes[kind];

    private static string Line(string data) => $"<path d=\"{data}\"/>";
}
