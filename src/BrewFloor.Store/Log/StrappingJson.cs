using System.Text.Json;
using System.Text.Json.Serialization;
using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Store.Log;

/// <summary>Level to volume: <c>{"dips": [...]}</c>, or <c>{"shape": {...}}</c> with the sizes as measured.</summary>
internal sealed class StrappingJson : JsonConverter<IStrapping>
{
    public override IStrapping Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var stored = JsonSerializer.Deserialize<Stored>(ref reader, options)!;
        return stored.Shape is { } shape
            ? shape.ToShape()
            : DipTable.Measured((stored.Dips ?? []).Select(d => new DipPoint(d.Level, d.Volume))).Value;
    }

    public override void Write(Utf8JsonWriter writer, IStrapping value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(
            writer,
            value switch
            {
                VesselShape shape => new Stored { Shape = Shape.Of(shape) },
                DipTable table => new Stored { Dips = [.. table.Points.Select(p => new Dip(p.Level, p.Volume))] },
                _ => throw new JsonException($"No way to store a {value.GetType().Name}."),
            },
            options
        );

    private sealed record Stored
    {
        public Shape? Shape { get; init; }

        public Dip[]? Dips { get; init; }
    }

    private sealed record Dip(Length Level, Volume Volume);

    /// <summary>Kind is flat, dish, cone or dome; the rest belongs to one of them.</summary>
    private sealed record End(string Kind)
    {
        public DishKind? Dish { get; init; }

        public Length? Height { get; init; }

        public Angle? IncludedAngle { get; init; }
    }

    private sealed record Shape(Length Diameter, Length CylinderHeight, Length Outlet, End Bottom, End Head)
    {
        public static Shape Of(VesselShape shape) =>
            new(
                shape.Diameter,
                shape.CylinderHeight,
                shape.Outlet,
                shape.Bottom switch
                {
                    ConeBottom cone => new("cone") { Height = cone.Height, IncludedAngle = cone.IncludedAngle },
                    DishedBottom dish => new("dish") { Dish = dish.Kind },
                    _ => new("flat"),
                },
                shape.Head switch
                {
                    DishedHead dish => new("dish") { Dish = dish.Kind },
                    DomedHead dome => new("dome") { Height = dome.Height },
                    _ => new("flat"),
                }
            );

        public VesselShape ToShape() =>
            VesselShape
                .Measured(
                    Diameter,
                    CylinderHeight,
                    Bottom.Kind switch
                    {
                        "cone" => new ConeBottom(Bottom.IncludedAngle, Bottom.Height),
                        "dish" => new DishedBottom(Bottom.Dish!.Value),
                        _ => new FlatBottom(),
                    },
                    Outlet,
                    Head.Kind switch
                    {
                        "dish" => new DishedHead(Head.Dish!.Value),
                        "dome" => new DomedHead(Head.Height!.Value),
                        _ => new FlatLid(),
                    }
                )
                .Value;
    }
}
