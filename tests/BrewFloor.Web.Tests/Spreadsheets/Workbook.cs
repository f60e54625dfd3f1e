using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace BrewFloor.Web.Tests.Spreadsheets;

/// <summary>Workbooks made by hand, part by part, so that they can be wrong in any way.</summary>
internal static class Workbook
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Packaged = "http://schemas.openxmlformats.org/package/2006";

    /// <summary>One sheet with these cells, each the inside of a <c>c</c> element with its attributes: <c> t="str"><v>K1</v></c>.</summary>
    public static byte[] Of(params string[][] rows) => Of([("Tanks", rows)]);

    public static byte[] Of((string Name, string[][] Rows)[] sheets) =>
        Packed([
            .. Around([.. sheets.Select(sheet => sheet.Name)]),
            .. sheets.Select((sheet, at) => ($"xl/worksheets/sheet{at + 1}.xml", Sheet(sheet.Rows))),
        ]);

    /// <summary>A workbook whose sheet is this text, well made or not.</summary>
    public static byte[] WithSheet(string xml) => Packed([.. Around(["Tanks"]), ("xl/worksheets/sheet1.xml", xml)]);

    public static string Text(string text) => $" t=\"inlineStr\"><is><t>{text}</t></is>";

    public static string Number(double number) => $"><v>{number.ToString("R", CultureInfo.InvariantCulture)}</v>";

    /// <summary>A true date: days since 1899-12-30, in a style that shows a date.</summary>
    public static string Day(int serial) => $" s=\"1\"><v>{serial}</v>";

    public static string Formula(string formula, string stored) => $" t=\"str\"><f>{formula}</f><v>{stored}</v>";

    public static byte[] Packed((string Name, string Content)[] parts)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in parts)
            {
                using var part = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
                part.Write(Encoding.UTF8.GetBytes(content));
            }
        }

        return bytes.ToArray();
    }

    /// <summary>A workbook whose sheet unpacks to so many megabytes of nothing.</summary>
    public static byte[] Bomb(int megabytes)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in Around(["Tanks"]))
            {
                using var part = zip.CreateEntry(name).Open();
                part.Write(Encoding.UTF8.GetBytes(content));
            }

            using var sheet = zip.CreateEntry("xl/worksheets/sheet1.xml", CompressionLevel.SmallestSize).Open();
            var blank = new byte[1024 * 1024];
            Array.Fill(blank, (byte)' ');
            for (var written = 0; written < megabytes; written++)
            {
                sheet.Write(blank);
            }
        }

        return bytes.ToArray();
    }

    private static string Sheet(string[][] rows)
    {
        var lines = rows.Select(
            (row, at) =>
                $"<row r=\"{at + 1}\">{string.Concat(row.Select((cell, column) => cell.Length == 0 ? "" : $"<c r=\"{(char)('A' + column)}{at + 1}\"{cell}</c>"))}</row>"
        );
        return $"<worksheet xmlns=\"{Main}\"><sheetData>{string.Concat(lines)}</sheetData></worksheet>";
    }

    private static IEnumerable<(string Name, string Content)> Around(string[] sheets)
    {
        yield return (
            "[Content_Types].xml",
            $"<Types xmlns=\"{Packaged}/content-types\"><Default Extension=\"xml\" ContentType=\"application/xml\"/><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/></Types>"
        );
        yield return (
            "_rels/.rels",
            $"<Relationships xmlns=\"{Packaged}/relationships\"><Relationship Id=\"r1\" Type=\"{Relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
        );
        yield return (
            "xl/workbook.xml",
            $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><sheets>{string.Concat(sheets.Select((name, at) => $"<sheet name=\"{name}\" sheetId=\"{at + 1}\" r:id=\"s{at + 1}\"/>"))}</sheets></workbook>"
        );
        yield return (
            "xl/_rels/workbook.xml.rels",
            $"<Relationships xmlns=\"{Packaged}/relationships\">{string.Concat(sheets.Select((_, at) => $"<Relationship Id=\"s{at + 1}\" Type=\"{Relations}/worksheet\" Target=\"worksheets/sheet{at + 1}.xml\"/>"))}<Relationship Id=\"st\" Type=\"{Relations}/styles\" Target=\"styles.xml\"/></Relationships>"
        );
        yield return (
            "xl/styles.xml",
            $"<styleSheet xmlns=\"{Main}\"><cellXfs count=\"2\"><xf numFmtId=\"0\"/><xf numFmtId=\"14\" applyNumberFormat=\"1\"/></cellXfs></styleSheet>"
        );
    }
}
