using System.Globalization;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace BrewFloor.Web.Api;

/// <summary>The interface described for programs (OpenAPI): made from the endpoints and from the records they take.</summary>
internal static class ApiDescription
{
    private const string Json = "application/json";
    private const string Problem = "application/problem+json";

    public static void Describe(OpenApiOptions options)
    {
        options.ShouldInclude = endpoint => endpoint.RelativePath?.StartsWith("api/", StringComparison.Ordinal) is true;
        options.AddDocumentTransformer(
            (document, _, _) =>
            {
                DescribeWhole(document);
                return Task.CompletedTask;
            }
        );
        options.AddOperationTransformer(
            (operation, context, _) =>
            {
                Describe(operation, context.Description.ActionDescriptor.EndpointMetadata, context.Document!);
                return Task.CompletedTask;
            }
        );
    }

    private static void DescribeWhole(OpenApiDocument document)
    {
        document.Info = new()
        {
            Title = "BrewFloor",
            Version = "1",
            Description =
                "The floor log for programs. Quantities are objects with a unit; lists come in pages; every answer that isn't a yes is problem details (RFC 9457).",
        };
        document.Servers?.Clear(); // wherever it was fetched from
        document.Components ??= new();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>(StringComparer.Ordinal)
        {
            ["token"] = new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description =
                    "Scopes: read, log. A token never allows, strikes or corrects, and reaches back 24 hours.",
            },
        };
        document.Components.Schemas = ApiSchemas.All(document);
    }

    private static void Describe(OpenApiOperation operation, IEnumerable<object> metadata, OpenApiDocument document)
    {
        var all = metadata.ToArray();
        operation.Security = [new() { [new OpenApiSecuritySchemeReference("token", document)] = [] }];
        operation.Parameters =
        [
            .. operation.Parameters ?? [],
            .. all.OfType<Taken>()
                .Select(taken => new OpenApiParameter
                {
                    Name = taken.Name,
                    In = ParameterLocation.Query,
                    Description = taken.Description,
                    Schema = new OpenApiSchema { Type = JsonSchemaType.String },
                }),
        ];
        var isWriting = all.OfType<TakesEntries>().Any();
        if (isWriting)
        {
            operation.RequestBody = new OpenApiRequestBody
            {
                Required = true,
                Content = Body(Json, new OpenApiSchemaReference(ApiSchemas.Entries, document)),
            };
        }

        if (all.OfType<TakesInputs>().Any())
        {
            operation.RequestBody = new OpenApiRequestBody
            {
                Required = true,
                Content = Body(Json, new OpenApiSchemaReference(ApiSchemas.Inputs, document)),
            };
        }

        operation.Responses = Answers(isWriting, document);
    }

    private static OpenApiResponses Answers(bool isWriting, OpenApiDocument document)
    {
        (int Status, string Means)[] problems =
        [
            (400, "Cannot be read; \"field\" says where."),
            (401, "No token, or not one of this floor."),
            (403, "The token lacks the scope."),
            (404, "Not there."),
            .. isWriting
                ?
                [
                    (409, "An id already stands for something else."),
                    (413, "Larger than 1 MB."),
                    (415, "Not JSON."),
                    (422, "The floor objects: every objection is listed, nothing was stored."),
                ]
                : Array.Empty<(int, string)>(),
            (500, "Failed; nothing was stored by it."),
            (503, "The database can't be reached; try again."),
        ];
        var answers = new OpenApiResponses
        {
            ["200"] = new OpenApiResponse
            {
                Description = "Done.",
                Content = Body(Json, new OpenApiSchema { Type = JsonSchemaType.Object }),
            },
        };
        foreach (var (status, means) in problems)
        {
            answers[status.ToString(CultureInfo.InvariantCulture)] = new OpenApiResponse
            {
                Description = means,
                Content = Body(Problem, new OpenApiSchemaReference(ApiSchemas.Problem, document)),
            };
        }

        return answers;
    }

    private static Dictionary<string, OpenApiMediaType> Body(string type, IOpenApiSchema schema) =>
        new(StringComparer.Ordinal) { [type] = new() { Schema = schema } };
}
