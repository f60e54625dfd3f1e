using System.Collections.Frozen;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Log;

/// <summary>The names under which kinds are stored, for good. A record may be renamed; its name here may not.</summary>
public static class EntryKinds
{
    public static readonly FrozenDictionary<string, Type> ByName = new Dictionary<string, Type>(StringComparer.Ordinal)
    {
        ["tank-taken-over"] = typeof(TankTakenOver),
        ["fill-planned"] = typeof(FillPlanned),
        ["filled"] = typeof(Filled),
        ["topped-up"] = typeof(ToppedUp),
        ["racked"] = typeof(Racked),
        ["level-measured"] = typeof(LevelMeasured),
        ["temperature"] = typeof(TemperatureTaken),
        ["pressure"] = typeof(PressureTaken),
        ["temperature-set"] = typeof(TemperatureSet),
        ["pressure-set"] = typeof(PressureSet),
        ["out-of-service"] = typeof(PutOutOfService),
        ["back-in-service"] = typeof(PutBackInService),
        ["emptied"] = typeof(Emptied),
        ["opened"] = typeof(Opened),
        ["closed"] = typeof(Closed),
        ["vented"] = typeof(Vented),
        ["aired"] = typeof(Aired),
        ["purged"] = typeof(Purged),
        ["parts-off"] = typeof(PartsTakenOff),
        ["refitted"] = typeof(Refitted),
        ["parts-seen"] = typeof(PartsSeen),
        ["leak-tested"] = typeof(LeakTested),
        ["gasket-changed"] = typeof(GasketChanged),
        ["relief-valve-tested"] = typeof(ReliefValveTested),
        ["pressure-tested"] = typeof(PressureTested),
        ["probe-calibrated"] = typeof(ProbeCalibrated),
        ["batch-taken-over"] = typeof(BatchTakenOver),
        ["packaged"] = typeof(Packaged),
        ["discarded"] = typeof(Discarded),
        ["dumped"] = typeof(Dumped),
        ["dry-hopped"] = typeof(DryHopped),
        ["gravity"] = typeof(GravityTaken),
        ["ph"] = typeof(PhTaken),
        ["culture-taken-over"] = typeof(CultureTakenOver),
        ["culture-received"] = typeof(CultureReceived),
        ["pitched"] = typeof(Pitched),
        ["harvested"] = typeof(Harvested),
        ["counted"] = typeof(Counted),
        ["culture-discarded"] = typeof(CultureDiscarded),
        ["item-received"] = typeof(ItemReceived),
        ["item-counted"] = typeof(ItemCounted),
        ["item-used"] = typeof(ItemUsed),
        ["item-discarded"] = typeof(ItemDiscarded),
        ["rinsed"] = typeof(Rinsed),
        ["washed"] = typeof(Washed),
        ["inspected"] = typeof(Inspected),
        ["sanitized"] = typeof(Sanitized),
        ["drained"] = typeof(Drained),
        ["passivated"] = typeof(Passivated),
        ["air-dried"] = typeof(AirDried),
        ["triggered"] = typeof(Triggered),
        ["exposed"] = typeof(Exposed),
        ["cleared"] = typeof(Cleared),
        ["allowed"] = typeof(Allowed),
        ["noted"] = typeof(Noted),
        ["answered"] = typeof(Answered),
        ["corrected"] = typeof(Corrected),
        ["struck"] = typeof(Struck),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<Type, string> Names = ByName.ToFrozenDictionary(k => k.Value, k => k.Key);

    public static string NameOf(LogEntry entry) => Names[entry.GetType()];
}
