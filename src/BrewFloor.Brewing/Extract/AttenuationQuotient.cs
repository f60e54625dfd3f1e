namespace BrewFloor.Brewing.Extract;

/// <summary>Real over apparent attenuation: how much of the fall in apparent extract is extract that went.</summary>
/// <remarks>
/// The literature disagrees, and this number decides the alcohol: means of 532 real brews lie at 0.802 to 0.808 (Cutaia,
/// Reid, Speers 2009, J. Inst. Brew. 115:318, Table III; check EX-26), physics gives 0.810 (check EX-17). Show which one
/// was used. The default value is <see cref="Mebak"/>.
/// </remarks>
public readonly record struct AttenuationQuotient
{
    private const double Usual = 0.81;

    private readonly double _aboveUsual;

    private AttenuationQuotient(double value) => _aboveUsual = value - Usual;

    /// <summary>0.81, from MEBAK's limit of attenuation: ours unless somebody chooses.</summary>
    public static AttenuationQuotient Mebak => default;

    /// <summary>0.8192, Balling's own: about 1.2 % more alcohol (check EX-13).</summary>
    public static AttenuationQuotient Classical => new(0.8192);

    /// <summary>The quotient itself.</summary>
    public double Value => Usual + _aboveUsual;

    /// <summary>A brewery's own quotient.</summary>
    /// <param name="value">0.78 to 0.84; what is published lies at 0.802 to 0.8192.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<AttenuationQuotient> Of(double value) =>
        Accepted.Between(0.78, 0.84, value, "attenuation-quotient") is { } refusal
            ? refusal
            : new AttenuationQuotient(value);

    /// <summary>What an analysed beer says: q = (OE - RE) / (OE - AE).</summary>
    /// <param name="original">Original extract.</param>
    /// <param name="real">Real extract, by distillation.</param>
    /// <param name="apparent">Apparent extract, by gravity.</param>
    /// <returns>Refused when the answer is not 0.78 to 0.84.</returns>
    /// <remarks>Source: the definition, as in Cutaia, Reid, Speers 2009. Checks EX-17, EX-26.</remarks>
    public static Outcome<AttenuationQuotient> From(DegreesPlato original, DegreesPlato real, DegreesPlato apparent) =>
        Of((original.Value - real.Value) / (original.Value - apparent.Value));
}
