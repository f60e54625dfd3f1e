namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>What a thumb in a wet glove has to hit on the page somebody stands on; each finding is a line to read.</summary>
internal static class Targets
{
    /// <summary>Touched on the floor, in px: rows, slabs, fields.</summary>
    public const int OnTheFloor = 64;

    /// <summary>Touched by whoever sits down for it.</summary>
    public const int AtTheDesk = 44;

    /// <summary>What is lower than that, or closer to its neighbour than 12 px, on a screen of each of these widths.</summary>
    /// <remarks>
    /// A box to tick is as large as its row. A link inside a sentence is excepted, as the Web Content Accessibility
    /// Guidelines do (2.5.8, "inline"): its line of text says how high it is. What floats over the page is measured against
    /// what floats beside it, as the rest passes below.
    /// </remarks>
    public static async Task<IReadOnlyList<string>> MissedAsync(Visit visit, int least, params int[] widths)
    {
        var missed = new List<string>();
        foreach (var width in widths)
        {
            await visit.Page.SetViewportSizeAsync(width, visit.Page.ViewportSize!.Height);
            missed.AddRange(await MissedAsync(visit, least));
        }

        return missed;
    }

    private static async Task<string[]> MissedAsync(Visit visit, int least) =>
        await visit.Page.EvaluateAsync<string[]>(
            """
            least => {
              document.querySelectorAll('details').forEach(one => one.open = true);
              const isInSentence = one => one.matches('p a, small a, .small a') && one.parentElement.textContent.trim() !== one.textContent.trim();
              const floats = one => !!one.closest('.ways, .logged, .save') && ['fixed', 'sticky'].includes(
                getComputedStyle(one.closest('.ways, .logged, .save')).position);
              const all = [...document.querySelectorAll('a, button, input, select, textarea, summary')]
                .filter(one => one.checkVisibility() && !one.matches('[type=hidden], .skip') && !isInSentence(one))
                .map(one => one.closest('label') ?? one)
                .filter((one, place, whole) => whole.indexOf(one) === place)
                .map(one => ({ one, box: one.getBoundingClientRect(), floats: floats(one) }));
              const name = one => `${one.localName} "${(one.textContent.trim() || one.name || '').replace(/\s+/g, ' ').slice(0, 40)}"`;
              const found = all
                .filter(({ box }) => box.height < least - .5 || box.width < Math.min(least, 44) - .5)
                .map(({ one, box }) => `${name(one)} is ${Math.round(box.width)} x ${Math.round(box.height)}`);
              all.forEach((a, i) => all.slice(i + 1).forEach(b => {
                if (a.floats !== b.floats || a.one.contains(b.one) || b.one.contains(a.one)) return;
                const across = Math.max(b.box.left - a.box.right, a.box.left - b.box.right);
                const along = Math.max(b.box.top - a.box.bottom, a.box.top - b.box.bottom);
                const apart = Math.max(across, along);
                if (apart < 11.5) found.push(`${name(a.one)} and ${name(b.one)} are ${Math.round(apart)} apart`);
              }));
              return found.map(line => `${location.pathname} at ${innerWidth}: ${line}`);
            }
            """,
            least
        );
}
