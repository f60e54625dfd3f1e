namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>What a ruler says of the page somebody stands on; each finding is a line to read, none is good.</summary>
internal static class Measures
{
    /// <summary>What reaches past the edge of the screen, so that the page would have to be pushed sideways.</summary>
    public static async Task<IReadOnlyList<string>> TooWideAsync(Visit visit, int width)
    {
        await visit.Page.SetViewportSizeAsync(width, 844);
        return await visit.Page.EvaluateAsync<string[]>(
            """
            () => {
              const screen = document.documentElement.clientWidth;
              if (document.documentElement.scrollWidth <= screen) return [];
              return [...document.querySelectorAll('body *')]
                .filter(one => one.getBoundingClientRect().right > screen + .5)
                .slice(-3)
                .map(one => `${location.pathname} at ${screen}: ${one.outerHTML.slice(0, 120)}`);
            }
            """
        );
    }

    /// <summary>What looks as if it could be pressed or filled in, and leads nowhere without script.</summary>
    public static async Task<IReadOnlyList<string>> DeadAsync(Visit visit) =>
        await visit.Page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('a, button, input, select, textarea, [onclick], [role=button]')]
              .filter(one => one.checkVisibility())
              .filter(one => {
                if (one.matches('a')) return !one.getAttribute('href') || one.getAttribute('href').startsWith('javascript:');
                if (one.matches('[onclick], [role=button]')) return true;
                if (one.matches('button, [type=submit]')) return one.type !== 'submit' || !one.form;
                return !one.form?.querySelector('button:not([type]), [type=submit]');
              })
              .map(one => `${location.pathname}: ${one.outerHTML.slice(0, 120)}`)
            """
        );

    /// <summary>Words that are cut off, or stand beyond the edge of the screen, once all text is twice as large.</summary>
    /// <remarks>The floor's filters are excepted: they are a row that is pushed sideways by itself.</remarks>
    public static async Task<IReadOnlyList<string>> CutOffAtTwiceTheTextAsync(Visit visit) =>
        await visit.Page.EvaluateAsync<string[]>(
            """
            () => {
              document.documentElement.style.fontSize = '200%';
              document.querySelectorAll('details').forEach(one => one.open = true);
              const screen = document.documentElement.clientWidth;
              const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
              const found = [];
              while (words.nextNode()) {
                const text = words.currentNode, holder = text.parentElement;
                if (!text.data.trim() || !holder.checkVisibility() || holder.closest('.spoken, .skip, .pick, script, option, datalist')) continue;
                const range = document.createRange();
                range.selectNodeContents(text);
                let [left, right] = [0, screen];
                for (let one = holder; one !== document.body; one = one.parentElement) {
                  if (getComputedStyle(one).overflowX !== 'visible' && !(one instanceof SVGElement)) {
                    const box = one.getBoundingClientRect();
                    [left, right] = [Math.max(left, box.left), Math.min(right, box.right)];
                  }
                }
                if ([...range.getClientRects()].some(box => box.right > right + 1 || box.left < left - 1)) {
                  found.push(`${location.pathname}: "${text.data.trim().slice(0, 60)}" in ${holder.localName}.${holder.getAttribute('class')}`);
                }
              }
              return found;
            }
            """
        );
}
