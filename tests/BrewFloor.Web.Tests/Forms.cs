using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace BrewFloor.Web.Tests;

/// <summary>Pages as a browser without script has them: read, filled in, posted.</summary>
internal static class Forms
{
    /// <summary>The page, which must be there.</summary>
    public static async Task<IHtmlDocument> PageAsync(this HttpClient browser, string path)
    {
        var answer = await browser.GetAsync(path, FloorApp.Stop);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {(int)answer.StatusCode} {answer.Headers.Location}");
        return await answer.PageAsync();
    }

    public static async Task<IHtmlDocument> PageAsync(this HttpResponseMessage answer) =>
        await new HtmlParser().ParseDocumentAsync(await answer.Content.ReadAsStringAsync(FloorApp.Stop), FloorApp.Stop);

    /// <summary>Opens a page, fills in one of its forms and sends it, with what the page put into its other fields.</summary>
    /// <param name="form">Its <c>@formname</c>.</param>
    public static async Task<HttpResponseMessage> SendFormAsync(
        this HttpClient browser,
        string path,
        string form,
        params (string Name, string Value)[] filled
    ) => await browser.SendFormAsync(path, await browser.PageAsync(path), form, filled);

    /// <inheritdoc cref="SendFormAsync(HttpClient, string, string, ValueTuple{string, string}[])"/>
    /// <param name="page">As it was opened.</param>
    public static Task<HttpResponseMessage> SendFormAsync(
        this HttpClient browser,
        string path,
        IHtmlDocument page,
        string form,
        params (string Name, string Value)[] filled
    )
    {
        var found = page.Forms.FirstOrDefault(f =>
            f.QuerySelector($"input[name=_handler][value='{form}']") is not null
        );
        Assert.True(found is not null, $"{path} has no form \"{form}\".");
        var fields = Fields(found)
            .Where(field => filled.All(f => !string.Equals(f.Name, field.Name, StringComparison.Ordinal)))
            .Concat(filled);
        var action = found.GetAttribute("action") is { Length: > 0 } elsewhere ? elsewhere : path;
        return browser.PostAsync(
            action,
            new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))),
            FloorApp.Stop
        );
    }

    private static IEnumerable<(string Name, string Value)> Fields(IHtmlFormElement form)
    {
        foreach (var element in form.QuerySelectorAll("[name]"))
        {
            var name = element.GetAttribute("name")!;
            switch (element)
            {
                case IHtmlInputElement { Type: "checkbox" or "radio", IsChecked: false }:
                    break;
                case IHtmlInputElement input:
                    yield return (name, input.Value);
                    break;
                case IHtmlSelectElement select:
                    yield return (name, select.Value ?? "");
                    break;
                case IHtmlTextAreaElement area:
                    yield return (name, area.Value);
                    break;
            }
        }
    }

    /// <summary>What stands there for everybody to read, white space as one.</summary>
    public static string Words(this IElement? element) =>
        string.Join(' ', (element?.TextContent ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
