namespace BrewFloor.Web.Labels;

/// <summary>What labels are printed on.</summary>
public enum LabelPaper
{
    /// <summary>210 x 297 mm, two columns of five.</summary>
    A4,

    /// <summary>8.5 x 11 in, two columns of five.</summary>
    Letter,

    /// <summary>Each label a page of its own, 100 x 62 mm: label printers.</summary>
    Each,
}
