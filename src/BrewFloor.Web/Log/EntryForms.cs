using System.Collections.Frozen;

namespace BrewFloor.Web.Log;

/// <summary>All forms, by the kind they write.</summary>
public static class EntryForms
{
    public static readonly FrozenDictionary<string, EntryForm> ByKind = typeof(EntryForms)
        .Assembly.GetTypes()
        .Where(type => type.IsSubclassOf(typeof(EntryForm)) && !type.IsAbstract)
        .Select(type => (EntryForm)Activator.CreateInstance(type)!)
        .ToFrozenDictionary(form => form.Kind, StringComparer.Ordinal);

    /// <summary>What makes sense here now, the likeliest first.</summary>
    public static IReadOnlyList<EntryForm> OfferedOn(FormFloor floor) =>
        [
            .. ByKind
                .Values.Where(form => form.About == floor.Subject.Kind && form.IsOffered(floor))
                .OrderByDescending(form => form.Likelihood(floor))
                .ThenBy(form => floor.Words.Verb(form.Kind), floor.Words.Order),
        ];
}
