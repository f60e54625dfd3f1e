namespace BrewFloor.Web.Log;

/// <summary>What a field measures; the reader's unit stands beside it.</summary>
public enum Measure
{
    Volume,
    SmallVolume, // yeast and sediment: mL first
    WaterIn, // by volume, or weighed
    Temperature,
    Pressure,
    Level,
    Mass,
    Minutes,
    Gravity,
    CarbonDioxide,
    Pieces,
    Stock, // of an item: pieces, by weight or by volume
    Plain, // a number without a unit
}

/// <summary>One field of an entry's form: what is asked, and under which name it is posted.</summary>
/// <param name="Name">Of the input; its label is the entry text "field.NAME".</param>
public abstract record Field(string Name)
{
    /// <summary>A form cannot be read without it.</summary>
    public bool IsRequired { get; init; }

    /// <summary>The key of the label when it isn't "field.NAME".</summary>
    public string Label { get; init; } = "field." + Name;

    /// <summary>The key of a line below the field.</summary>
    public string? Hint { get; init; }

    /// <summary>What stands in it when the form opens.</summary>
    public string? Start { get; init; }

    /// <summary>Tucked away until asked for.</summary>
    public bool IsExtra { get; init; }
}

/// <summary>A quantity with its unit.</summary>
public sealed record QuantityField(string Name, Measure Measure) : Field(Name)
{
    /// <summary>The one figure the form is about: written large.</summary>
    public bool IsBig { get; init; }

    /// <summary>The unit chosen when the form opens, if it isn't the reader's own.</summary>
    public string? StartUnit { get; init; }
}

/// <summary>A line of text.</summary>
public sealed record TextField(string Name) : Field(Name)
{
    /// <summary>Offered, not demanded.</summary>
    public IReadOnlyList<string> Suggestions { get; init; } = [];

    /// <summary>A number is typed: a phone shows figures.</summary>
    public bool IsNumber { get; init; }
}

/// <summary>One of a few: slabs up to five, a list beyond.</summary>
/// <param name="Options">Posted value and what is read. A value of an enum is posted by its name.</param>
public sealed record ChoiceField(string Name, IReadOnlyList<(string Value, string Text)> Options) : Field(Name)
{
    /// <summary>A list however few they are: what was chosen can be taken back.</summary>
    public bool IsList { get; init; }
}

/// <summary>Any of a few, ticked; posted under one name, or as one text with commas.</summary>
public sealed record TicksField(string Name, IReadOnlyList<(string Value, string Text)> Options) : Field(Name);

/// <summary>Yes or no.</summary>
public sealed record FlagField(string Name) : Field(Name);

/// <summary>A day and a time at the site.</summary>
public sealed record MomentField(string Name) : Field(Name);

/// <summary>A day.</summary>
public sealed record DayField(string Name) : Field(Name);

/// <summary>The same few fields several times over; rows left empty are skipped.</summary>
/// <remarks>A field of row 2 is posted as <c>NAME.2.FIELD</c>.</remarks>
public sealed record RowsField(string Name, IReadOnlyList<Field> Fields, int Count) : Field(Name)
{
    public IEnumerable<IReadOnlyList<Field>> Rows =>
        Enumerable
            .Range(0, Count)
            .Select(row => (IReadOnlyList<Field>)[.. Fields.Select((one, at) => In(row, one, at))]);

    /// <summary>What stands in the first rows when the form opens, by row and field.</summary>
    public IReadOnlyList<IReadOnlyList<string?>> Starts { get; init; } = [];

    public string NameIn(int row, string name) => $"{Name}.{row}.{name}";

    private Field In(int row, Field one, int at) =>
        one with
        {
            Name = NameIn(row, one.Name),
            Start = row < Starts.Count ? Starts[row][at] : one.Start,
        };
}
