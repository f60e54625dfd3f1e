namespace BrewFloor.Brewing.Forecast;

/// <summary>
/// The dossier's five-parameter logistic, written so that it starts where the wort does: times in h, extracts in °P.
/// P(t) = End + (Start - End) w(D(t) / D(0)), D = (1 + exp(B (t - M)))^-s. With w(x) = x it is the logistic; w(x) = x + a
/// sin(2 pi x) / (2 pi) lets a real fall be off it, steeper at both ends and flatter between, or the other way.
/// </summary>
internal readonly struct Fall
{
    public const int Count = 6;

    private const double MostOff = 0.9; // w still only rises

    private readonly double _m;

    private readonly double _s;

    private readonly double _a;

    private readonly double _soft0;

    private Fall(ReadOnlySpan<double> p)
    {
        (End, Start) = (p[0], p[1]);
        (B, _m, _s, _a) = (Math.Exp(p[2]), Math.Exp(p[3]), Math.Exp(p[4]), MostOff * Math.Tanh(p[5]));
        _soft0 = SoftPlus(-B * _m);
    }

    public double End { get; }

    public double Start { get; }

    public double B { get; }

    /// <summary>From end, start, the logarithms of B, M and s, and how far it is off a logistic.</summary>
    public static Fall Of(ReadOnlySpan<double> p) => new(p);

    public double At(double t)
    {
        var left = Math.Exp(_s * (_soft0 - SoftPlus(B * (t - _m))));
        return End + ((Start - End) * Warped(left, _a));
    }

    /// <summary>The value at a time and its slope by each of the six.</summary>
    public double At(double t, Span<double> slopes)
    {
        var (u, u0) = (B * (t - _m), -B * _m);
        var soft = SoftPlus(u);
        var left = Math.Exp(_s * (_soft0 - soft));
        var warped = Warped(left, _a);
        var fall = (Start - End) * left * _s * (1 + (_a * Math.Cos(2 * Math.PI * left)));
        var (rise, rise0) = (Sigmoid(u), Sigmoid(u0));
        slopes[0] = 1 - warped;
        slopes[1] = warped;
        slopes[2] = fall * ((rise0 * u0) - (rise * u));
        slopes[3] = fall * B * _m * (rise - rise0);
        slopes[4] = fall * (_soft0 - soft);
        slopes[5] = (Start - End) * (MostOff - (_a * _a / MostOff)) * Math.Sin(2 * Math.PI * left) / (2 * Math.PI);
        return End + ((Start - End) * warped);
    }

    /// <summary>When it stands at a gravity, h; infinite when it never does.</summary>
    public double TimeTo(double gravity)
    {
        var left = (gravity - End) / (Start - End);
        return left <= 0 ? double.PositiveInfinity
            : left >= 1 ? 0
            : TimeOf(Straight(left, _a));
    }

    private static double Warped(double x, double a) => x + (a * Math.Sin(2 * Math.PI * x) / (2 * Math.PI));

    // Turns the warp back: Newton's steps, kept inside.
    private static double Straight(double warped, double a)
    {
        var (low, high, x) = (0.0, 1.0, warped);
        for (var i = 0; i < 30; i++)
        {
            var off = Warped(x, a) - warped;
            if (Math.Abs(off) < 1e-10)
            {
                break;
            }

            (low, high) = off > 0 ? (low, x) : (x, high);
            var next = x - (off / (1 + (a * Math.Cos(2 * Math.PI * x))));
            x = next > low && next < high ? next : (low + high) / 2;
        }

        return x;
    }

    private double TimeOf(double left) => _m + (InverseSoftPlus(_soft0 - (Math.Log(left) / _s)) / B);

    private static double SoftPlus(double u) => u > 30 ? u : Math.Log(1 + Math.Exp(u));

    private static double InverseSoftPlus(double y) => y > 30 ? y : Math.Log(Math.Exp(y) - 1);

    private static double Sigmoid(double u) => 1 / (1 + Math.Exp(-u));
}
