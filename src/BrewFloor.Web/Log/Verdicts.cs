using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;

namespace BrewFloor.Web.Log;

/// <summary>Several entries of one form are answered together: each objection stands once.</summary>
public static class Verdicts
{
    /// <returns>Null: there was nothing to judge; all of it is in the log already.</returns>
    public static Verdict? Together(Listed<Judged> judged) =>
        judged is []
            ? null
            : new(
                judged.Any(j => j.Verdict.Nature is Nature.Told) ? Nature.Told : judged[0].Verdict.Nature,
                [.. judged.SelectMany(j => j.Verdict.Objections).Distinct()],
                [.. judged.SelectMany(j => j.Verdict.Allowed).Distinct()]
            );
}
