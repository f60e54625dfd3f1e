using System.Text;
using BrewFloor.Brewing;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Reads a file as it was brought: an XLSX, or text with separators. What it is is told by its bytes, not by its name.</summary>
internal static class SheetFile
{
    private static ReadOnlySpan<byte> Zip => "PK\u0003\u0004"u8;

    private static ReadOnlySpan<byte> OldWorkbook => [0xD0, 0xCF, 0x11, 0xE0];

    // Strict: what isn't UTF-8 is not guessed at letter by letter.
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The rows; refused with a code that says what is wrong with the file as a whole.</summary>
    public static Outcome<SheetTable> Read(ReadOnlyMemory<byte> file)
    {
        if (file.Length == 0)
        {
            return new Refusal("sheet-empty", "file", "", "");
        }

        if (file.Length > SheetLimits.Bytes)
        {
            return new Refusal("sheet-too-large", "file", "", "2");
        }

        var bytes = file.Span;
        if (bytes.StartsWith(OldWorkbook))
        {
            return new Refusal("sheet-old", "file", "", "");
        }

        return bytes.StartsWith(Zip) ? XlsxSheet.Read(file) : Text(file);
    }

    private static Outcome<SheetTable> Text(ReadOnlyMemory<byte> file)
    {
        var (text, isWestern) = Decoded(file.Span);
        return text.Any(c => c is '\ufffd' || (char.IsControl(c) && c is not ('\t' or '\r' or '\n')))
            ? new Refusal("sheet-unreadable", "file", "", "")
            : CsvSheet.Read(text, isWestern);
    }

    private static (string Text, bool IsWestern) Decoded(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.UTF8.Preamble))
        {
            return (Encoding.UTF8.GetString(bytes[Encoding.UTF8.Preamble.Length..]), false);
        }

        foreach (var wide in (Encoding[])[Encoding.Unicode, Encoding.BigEndianUnicode])
        {
            if (bytes.StartsWith(wide.Preamble))
            {
                return (wide.GetString(bytes[wide.Preamble.Length..]), false);
            }
        }

        try
        {
            return (Utf8.GetString(bytes), false);
        }
        catch (DecoderFallbackException)
        {
            return (CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes), true);
        }
    }
}
