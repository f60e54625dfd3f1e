using System.Net;
using System.Text;
using AngleSharp.Html.Dom;

namespace BrewFloor.Web.Tests.Spreadsheets;

/// <summary>Spreadsheets sent from a browser, and the fates of their rows as its page says them.</summary>
internal static class Bringing
{
    public static void HasFates(IHtmlDocument page, string[] fates)
    {
        var rows = page.QuerySelectorAll(".fates li");
        var said = string.Join('\n', rows.Select(row => row.Words()));
        Assert.True(fates.SequenceEqual(rows.Select(row => row.GetAttribute("data-fate")!)), said);
    }

    public static async Task<string> BringAsync(HttpClient browser, string kind, string text)
    {
        var answer = await SendAsync(browser, kind, Encoding.UTF8.GetBytes(text));
        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        return answer.Headers.Location!.IsAbsoluteUri
            ? answer.Headers.Location.PathAndQuery
            : "/" + answer.Headers.Location.ToString().TrimStart('/');
    }

    public static async Task<HttpResponseMessage> SendAsync(HttpClient browser, string kind, byte[] file)
    {
        var page = await browser.PageAsync("/import");
        using var form = new MultipartFormDataContent();
        foreach (var hidden in page.QuerySelectorAll("form[enctype] input[type=hidden]").OfType<IHtmlInputElement>())
        {
            form.Add(new StringContent(hidden.Value), hidden.Name!);
        }

        form.Add(new StringContent(kind), "kind");
        using var content = new ByteArrayContent(file);
        form.Add(content, "file", "ours.csv");
        return await browser.PostAsync("/import", form, FloorApp.Stop);
    }
}
