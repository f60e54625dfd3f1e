using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;
using Microsoft.OpenApi;

namespace BrewFloor.Web.Api;

/// <summary>Schemas of what programs send: one of each kind of entry, made from the same fields that are read.</summary>
internal static class ApiSchemas
{
    public const string Entries = "entries";
    public const string Inputs = "inputs";
    public const string Problem = "problem";

    private const string Answer = "answer";

    public static Dictionary<string, IOpenApiSchema> All(OpenApiDocument document)
    {
        var all = new Dictionary<string, IOpenApiSchema>(StringComparer.Ordinal)
        {
            [Answer] = Object(
                ("reason", Of(JsonSchemaType.String)),
                ("codes", List(Of(JsonSchemaType.String))),
                ("already_happened", Of(JsonSchemaType.Boolean))
            ),
            [Inputs] = GivenInputs(),
            [Problem] = ProblemDetails(),
        };
        foreach (var (kind, type) in EntryKinds.ByName.OrderBy(kind => kind.Key, StringComparer.Ordinal))
        {
            all[kind] = Entry(kind, type, document);
        }

        IOpenApiSchema[] kinds =
        [
            .. EntryKinds
                .ByName.Keys.Order(StringComparer.Ordinal)
                .Select(kind => new OpenApiSchemaReference(kind, document)),
        ];
        var one = new OpenApiSchema { OneOf = kinds };
        all[Entries] = new OpenApiSchema { OneOf = [.. kinds, Object(("entries", List(one)))] };
        return all;
    }

    private static OpenApiSchema Entry(string kind, Type type, OpenApiDocument document)
    {
        var schema = Object(
            ("id", Text("uuid")),
            ("kind", new OpenApiSchema { Type = JsonSchemaType.String, Enum = [kind] }),
            ("at", Text("date-time")),
            ("sent_at", Text("date-time")),
            ("done_by", List(Text("uuid"))),
            ("note", new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = 4000 }),
            ("answer", new OpenApiSchemaReference(Answer, document))
        );
        AddFields(schema, type);
        schema.Required!.UnionWith(["id", "kind"]);
        return schema;
    }

    private static void AddFields(OpenApiSchema schema, Type type)
    {
        foreach (var field in ApiFields.Of(type))
        {
            var name = field.PointsTo is null ? field.Name : field.Spoken;
            schema.Properties![name] = field.PointsTo is { } kind ? Named(kind) : Of(field.Type);
            if (field.PointsTo is not null)
            {
                schema.Properties[field.Name] = Text("uuid"); // in place of the code or number
            }
            else if (field.IsRequired)
            {
                schema.Required!.Add(name);
            }
        }
    }

    private static OpenApiSchema Of(Type type)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        return ApiQuantities.Are(bare) ? Quantity(bare)
            : bare.IsEnum ? Choice(Numbers.ChoicesOf(bare))
            : Lists.Are(bare) ? List(Of(Lists.ItemOf(bare)))
            : ApiFields.AreIn(bare) ? Record(bare)
            : bare == typeof(Guid) ? Text("uuid")
            : bare == typeof(DateTimeOffset) ? Text("date-time")
            : bare == typeof(DateOnly) ? Text("date")
            : bare == typeof(bool) ? Of(JsonSchemaType.Boolean)
            : bare == typeof(int) ? Of(JsonSchemaType.Integer)
            : bare == typeof(double) ? Of(JsonSchemaType.Number)
            : bare == typeof(string) ? Of(JsonSchemaType.String)
            : Of(JsonSchemaType.Object);
    }

    private static OpenApiSchema Record(Type type)
    {
        var schema = Object();
        AddFields(schema, type);
        return schema;
    }

    private static OpenApiSchema Quantity(Type type)
    {
        var schema = Object(("value", Of(JsonSchemaType.Number)), ("unit", Choice(ApiQuantities.UnitsOf(type))));
        schema.Required!.UnionWith(["value", "unit"]);
        return schema;
    }

    // Which inputs there are, the calculator says itself.
    private static OpenApiSchema GivenInputs() =>
        new()
        {
            Type = JsonSchemaType.Object,
            AdditionalProperties = new OpenApiSchema
            {
                OneOf =
                [
                    Object(("value", Of(JsonSchemaType.Number)), ("unit", Of(JsonSchemaType.String))),
                    Of(JsonSchemaType.Number),
                    Of(JsonSchemaType.String),
                ],
            },
        };

    private static OpenApiSchema ProblemDetails()
    {
        var objection = Object(
            ("entry", Text("uuid")),
            ("code", Of(JsonSchemaType.String)),
            ("level", Choice(["caution", "stop", "hard_stop", "impossible"])),
            ("text", Of(JsonSchemaType.String)),
            ("numbers", Of(JsonSchemaType.Object))
        );
        return Object(
            ("type", Of(JsonSchemaType.String)),
            ("title", Of(JsonSchemaType.String)),
            ("status", Of(JsonSchemaType.Integer)),
            ("detail", Of(JsonSchemaType.String)),
            ("field", Of(JsonSchemaType.String)),
            ("objections", List(objection))
        );
    }

    private static OpenApiSchema Named(SubjectKind kind) =>
        Of(kind is SubjectKind.Tank ? JsonSchemaType.String : JsonSchemaType.Integer);

    private static OpenApiSchema Of(JsonSchemaType type) => new() { Type = type };

    private static OpenApiSchema Text(string format) => new() { Type = JsonSchemaType.String, Format = format };

    private static OpenApiSchema List(IOpenApiSchema item) => new() { Type = JsonSchemaType.Array, Items = item };

    private static OpenApiSchema Choice(IEnumerable<string> values) =>
        new() { Type = JsonSchemaType.String, Enum = [.. values.Select(value => (JsonNode)value)] };

    private static OpenApiSchema Object(params (string Name, IOpenApiSchema Schema)[] properties) =>
        new()
        {
            Type = JsonSchemaType.Object,
            Properties = properties.ToDictionary(p => p.Name, p => p.Schema, StringComparer.Ordinal),
            Required = new HashSet<string>(StringComparer.Ordinal),
        };
}
