using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Log;

/// <summary>What forms ask the floor, in their own short words.</summary>
public static class FormWords
{
    extension(FormFloor floor)
    {
        public Guid TankId => floor.Tank?.Id ?? default;

        public Guid BatchId => floor.BatchIdOrNone ?? floor.Batch?.Id ?? default;

        /// <summary>The batch in the tank; for a correction, the one its entry is about.</summary>
        public Guid? BatchIdOrNone =>
            floor.Corrected is { } corrected
                ? corrected
                    .Subjects.Where(subject => subject.Kind is SubjectKind.Batch)
                    .Select(subject => (Guid?)subject.Id)
                    .FirstOrDefault()
                : floor.TankState?.BatchId;

        public Guid CultureId => floor.Culture?.Id ?? default;

        public bool HoldsBeer => floor.TankState?.HoldsBeer is true;

        /// <summary>Nothing was ever logged on this tank.</summary>
        public bool IsNew =>
            floor.TankState is { Soil: Soil.Unknown, LastFilled: null, LastEmptied: null, HoldsBeer: false };

        public bool IsPitched => floor.BatchState?.Pitches.Count > 0;

        /// <summary>What the form is about: the item, the culture, the tank, else the batch.</summary>
        public Subject Subject =>
            floor.Item is { } item ? Subject.Item(item.Id)
            : floor.Culture is { } culture ? Subject.Culture(culture.Id)
            : floor.Tank is { } tank ? Subject.Tank(tank.Id)
            : Subject.Batch(floor.BatchId);

        public bool Is(Soil soil) => floor.TankState is { HoldsBeer: false } state && state.Soil == soil;

        public bool HoldsJob(string rule) => floor.OpenRules.Contains(rule, StringComparer.Ordinal);

        /// <summary>All values of an enum, as slabs or a list.</summary>
        public IReadOnlyList<(string Value, string Text)> Choices<TEnum>()
            where TEnum : struct, Enum => floor.Choices(Enum.GetValues<TEnum>());

        /// <summary>These values of an enum.</summary>
        public IReadOnlyList<(string Value, string Text)> Choices<TEnum>(params TEnum[] values)
            where TEnum : struct, Enum =>
            [.. values.Select(value => (value.ToString(), floor.Words.Entry($"choice.{typeof(TEnum).Name}.{value}")))];

        /// <summary>Words offered in a text field: the entry text, split at its semicolons.</summary>
        public IReadOnlyList<string> Offers(string key) =>
            floor.Words.Entry(key).Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

        public IReadOnlyList<(string Value, string Text)> TankChoices() =>
            [.. floor.OtherTanks.Select(tank => (tank.Thing.Id.ToString(), tank.Thing.Code))];

        public IReadOnlyList<(string Value, string Text)> CultureChoices() =>
            [
                .. floor.Cultures.Select(culture =>
                    (
                        culture.Thing.Id.ToString(),
                        floor.Words.Entry(
                            "choice.culture",
                            new("number", culture.Thing.Number),
                            new("strain", culture.Thing.Strain),
                            new("generation", culture.State.Generation),
                            new("amount", culture.State.Amount)
                        )
                    )
                ),
            ];

        /// <summary>The kinds that a brewer may allow beforehand.</summary>
        public IReadOnlyList<(string Value, string Text)> KindChoices() =>
            [.. EntryKinds.ByName.Keys.Where(floor.Words.HasVerb).Select(kind => (kind, floor.Words.Verb(kind)))];

        /// <summary>The strain that was pitched, where it is one of the house's.</summary>
        public string? StrainPitched() =>
            floor.BatchState?.Pitches is { Count: > 0 } pitches
            && pitches[^1].CultureId is { } culture
            && floor.Strains.TryGetValue(culture, out var strain)
                ? strain
                : null;

        /// <summary>What is at the outlet: trub first, then yeast, hops when they went in last.</summary>
        public string LikelySediment() =>
            floor.BatchState is not { } batch ? nameof(Sediment.Trub)
            : batch.DryHops.Count > 0 ? nameof(Sediment.Hops)
            : batch.Dumps.Any(dump => dump.What is Sediment.Trub) ? nameof(Sediment.Yeast)
            : nameof(Sediment.Trub);
    }
}
