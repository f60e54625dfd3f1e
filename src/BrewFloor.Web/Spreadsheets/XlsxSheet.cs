using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml;
using BrewFloor.Brewing;
using ExcelDataReader;
using ExcelDataReader.Exceptions;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>An XLSX workbook (ECMA-376): the first sheet that holds anything. Formulas count by the value stored with them.</summary>
internal static class XlsxSheet
{
    private const int Buffer = 64 * 1024;

    // Its reader asks for the encoding of much older files before it looks at this one.
    static XlsxSheet() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static Outcome<SheetTable> Read(ReadOnlyMemory<byte> file)
    {
        using var stream = new MemoryStream(file.ToArray(), writable: false);
        try
        {
            if (Unpacked(stream) is { } refusal)
            {
                return refusal;
            }

            stream.Position = 0;
            using var workbook = ExcelReaderFactory.CreateOpenXmlReader(stream);
            return Rows(workbook);
        }
        catch (Exception e) when (IsOfTheFile(e))
        {
            return new Refusal("sheet-unreadable", "file", "", "");
        }
    }

    // Sizes are only said by the file: each part is unpacked and counted, and nothing of it is kept.
    private static Refusal? Unpacked(Stream stream)
    {
        using var zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
        if (zip.Entries.Count > SheetLimits.Parts || zip.Entries.Sum(part => part.Length) > SheetLimits.Unpacked)
        {
            return TooLarge();
        }

        var (sum, buffer) = (0L, new byte[Buffer]);
        foreach (var part in zip.Entries)
        {
            using var content = part.Open();
            for (int read; (read = content.Read(buffer)) > 0; )
            {
                sum += read;
                if (sum > SheetLimits.Unpacked)
                {
                    return TooLarge();
                }
            }
        }

        return null;
    }

    private static Refusal TooLarge() => SheetLimits.TooMany("sheet-unpacks", SheetLimits.Unpacked / (1024 * 1024));

    private static Outcome<SheetTable> Rows(IExcelDataReader workbook)
    {
        do
        {
            var rows = new List<IReadOnlyList<SheetCell>>();
            while (workbook.Read())
            {
                var row = SheetLimits.Row(Cells(workbook), workbook.Depth + 1);
                if (!row.Gives(out var kept))
                {
                    return row.Refusal!;
                }

                if (kept.Count > 0 && workbook.Depth > 2 * SheetLimits.Rows)
                {
                    return SheetLimits.TooMany("sheet-rows", SheetLimits.Rows);
                }

                if (workbook.Depth <= 2 * SheetLimits.Rows)
                {
                    rows.Add(kept);
                }
            }

            if (rows.Exists(row => row.Count > 0))
            {
                var name = workbook.ResultsCount > 1 ? workbook.Name : null;
                return SheetLimits.Within(rows, new(IsWestern: false, name, Separator: null));
            }
        } while (workbook.NextResult());

        return new Refusal("sheet-empty", "file", "", "");
    }

    private static IEnumerable<SheetCell> Cells(IExcelDataReader row) =>
        Enumerable.Range(0, row.FieldCount).Select(column => Cell(row, column));

    private static SheetCell Cell(IExcelDataReader row, int column) =>
        row.GetValue(column) switch
        {
            null => new(""),
            DateTime on => SheetCell.Of(on),
            string text => new(Plain(text)),
            double number => new(Number(number)),
            IFormattable other => new(other.ToString(null, CultureInfo.InvariantCulture)),
            var flag => new(flag.ToString() ?? ""),
        };

    // As precise as anybody measures; 0.1 + 0.2 is 0.3 again.
    private static string Number(double number) =>
        Math.Round(number, 9).ToString("0.#########", CultureInfo.InvariantCulture);

    private static string Plain(string text) => string.Concat(text.Where(c => !char.IsControl(c) || c is '\n')).Trim();

    // Anybody's bytes go through a reader that trusts them: whatever it stumbles over is the file's fault.
    private static bool IsOfTheFile(Exception e) =>
        e
            is InvalidDataException
                or ExcelReaderException
                or XmlException
                or IOException
                or FormatException
                or OverflowException
                or ArgumentException
                or InvalidOperationException
                or IndexOutOfRangeException
                or NullReferenceException
                or KeyNotFoundException
                or InvalidCastException
                or NotSupportedException
                or EncoderFallbackException;
}
