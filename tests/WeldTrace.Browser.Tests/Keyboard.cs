using Microsoft.Playwright;

namespace WeldTrace.Browser.Tests;

/// <summary>A person without a mouse: reaches everything with Tab, and sees at each step what has the focus.</summary>
internal sealed class Keyboard(IPage page)
{
    private const int MostTabs = 150;

    private const string FocusedName = """
        () => {
          const el = document.activeElement;
          if (!el || el === document.body) { return ''; }
          const label = el.labels && el.labels.length ? el.labels[0] : el;
          return (el.getAttribute('aria-label') || label.innerText || el.value || '').replace(/\s+/g, ' ').trim();
        }
        """;

    private const string IsFocusShown = """
        () => {
          const style = getComputedStyle(document.activeElement);
          return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0 || style.boxShadow !== 'none';
        }
        """;

    private const string IsFilled = "() => (document.activeElement.value ?? '') !== ''";

    private const string IsSelected =
        "() => getSelection().toString() === document.activeElement.value";

    /// <summary>Goes on with Tab until the control of that name has the focus, which must be seen.</summary>
    public async Task ReachAsync(string name)
    {
        List<string> passed = [];
        for (var i = 0; i < MostTabs; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            var focused = await page.EvaluateAsync<string>(FocusedName);
            if (IsNamed(focused, name))
            {
                Assert.True(
                    await page.EvaluateAsync<bool>(IsFocusShown),
                    $"'{name}' has the focus, but nothing shows it."
                );
                return;
            }

            passed.Add(focused);
        }

        Assert.Fail(
            $"'{name}' is not reached by Tab on {page.Url}; reached: {string.Join(" | ", passed.Distinct())}"
        );
    }

    // A unit or a hint may follow the name; "Machines" is another name than "Machine".
    private static bool IsNamed(string focused, string name) =>
        focused.StartsWith(name, StringComparison.Ordinal)
        && (focused.Length == name.Length || !char.IsLetter(focused[name.Length]));

    public async Task TypeAsync(string label, string text)
    {
        await ReachAsync(label);
        if (await page.EvaluateAsync<bool>(IsFilled))
        {
            // A busy browser selects late: the first key would be selected with the rest, and replaced by the second.
            await page.Keyboard.PressAsync("Control+A");
            await page.WaitForFunctionAsync(IsSelected);
        }

        await page.Keyboard.TypeAsync(text);
    }

    public async Task PressAsync(string name, string key = "Enter")
    {
        await ReachAsync(name);
        await page.Keyboard.PressAsync(key);
    }

    /// <summary>Opens the file chooser with the keyboard and hands in a file.</summary>
    public async Task HandInAsync(string label, string fileName, string mediaType, byte[] bytes)
    {
        var chooser = await ChooserAsync(label);
        await chooser.SetFilesAsync(
            new FilePayload
            {
                Name = fileName,
                MimeType = mediaType,
                Buffer = bytes,
            }
        );
    }

    // A page that is still being put in place takes the focus along, and the key goes nowhere: then once more.
    private async Task<IFileChooser> ChooserAsync(string label)
    {
        for (var attempt = 1; ; attempt++)
        {
            await ReachAsync(label);
            try
            {
                return await page.RunAndWaitForFileChooserAsync(
                    () => page.Keyboard.PressAsync(attempt == 1 ? "Enter" : "Space"),
                    new() { Timeout = 6000 }
                );
            }
            catch (TimeoutException) when (attempt < 3) { }
        }
    }
}
