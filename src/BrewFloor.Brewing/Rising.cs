namespace BrewFloor.Brewing;

/// <summary>Finds where a curve that only rises reaches a value.</summary>
internal static class Rising
{
    /// <summary>The place between two ends where the curve reaches the target, to the last bit of a double.</summary>
    public static double Where(Func<double, double> curve, double target, double low, double high)
    {
        while (true)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high)
            {
                return middle;
            }

            (low, high) = curve(middle) < target ? (middle, high) : (low, middle);
        }
    }
}
