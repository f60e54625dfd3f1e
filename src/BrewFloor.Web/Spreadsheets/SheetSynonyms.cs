using System.Collections.Frozen;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Words of the trade, as people head their columns and fill their cells with them. Common practice, no source.</summary>
/// <remarks>Compared by letters and digits alone, without capitals. What a form calls the same thing is known besides.</remarks>
internal static class SheetSynonyms
{
    /// <summary>What a column of a field is headed with.</summary>
    public static readonly FrozenDictionary<string, string[]> Headers = Table(
        ("code", "code tank tankcode tankid tankno tanknumber vessel vesselid vesselcode fermenter fv id no number"),
        ("tank-name", "name tankname vesselname description nickname"),
        ("type", "type tanktype vesseltype"),
        ("material", "material builtof madeof steel"),
        (
            "highest-cleaning",
            "maxtemp maxtemperature maxcleaningtemp highestcleaning hottestcleaning maxcip maxciptemp"
        ),
        (
            "working",
            "working workingvolume workingcapacity capacity volume size nominalvolume netvolume fillvolume batchsize"
        ),
        ("headspace", "headspace headspacewanted headspacepercent"),
        ("cooling", "cooling cooled coolingby"),
        ("heating", "heating heated heatingby"),
        ("open-type", "opentype openfermenter"),
        ("vacuum-relief", "vacuumrelief vacuumreliefvalve vacuumvalve antivacuum"),
        ("loan-from", "loanfrom onloanfrom borrowedfrom"),
        ("loan-until", "loanuntil onloanuntil borroweduntil"),
        ("diameter", "diameter insidediameter innerdiameter innerdia insidedia id dia tankdiameter"),
        ("cylinder-height", "cylinderheight height shellheight straightheight sidewall straightside cylinder"),
        ("bottom", "bottom bottomtype"),
        ("cone-angle", "coneangle angle cone includedangle"),
        ("cone-height", "coneheight"),
        ("outlet", "outlet outletdiameter dumpport"),
        ("head", "head top toptype headtype lid"),
        ("dome-height", "domeheight headheight"),
        ("rating", "rating ratedpressure maxpressure pressurerating mawp workingpressure allowablepressure"),
        ("rating-source", "ratingsource ratedby readfrom"),
        ("relief", "relief prv reliefvalve reliefsetting prvsetting reliefpressure"),
        ("relief-tested", "relieftested prvtested relieftest lastrelieftest reliefvalvetested"),
        ("soil", "soil state condition cleanliness cleanstate tankstate"),
        ("closure", "closure shut closed lidstate"),
        ("gas", "gas atmosphere blanket"),
        ("bath", "bath passivationbath passivatedwith acid"),
        ("dried-on", "driedon passivated passivatedon lastpassivation lastpassivated airdried"),
        ("never", "neverpassivated newsteel"),
        ("tank", "tank tankcode vessel fermenter fv intank in location tankno tankid"),
        ("number", "number no batch batchno batchnumber batchid brew brewno brewnumber gyle gyleno lot lotno"),
        ("name", "name beer beername batchname brewname brand recipe product"),
        ("style", "style beerstyle beertype"),
        ("beer", "kind alelager aleorlager yeasttype fermentation"),
        ("original", "og originalgravity startinggravity originalextract oe startgravity wortgravity"),
        ("limit", "limit limitofattenuation attenuationlimit targetfg expectedfg forcedferment"),
        ("allergens", "allergens allergen contains"),
        ("volume", "volume vol intankvolume fill filledvolume amount litres liters quantity knockoutvolume"),
        ("gravity", "gravity currentgravity sg lastgravity presentgravity gravitynow fg finalgravity"),
        ("filled-at", "filled filledon filldate brewed brewdate brewedon date startdate started knockout transferdate"),
        ("pitched-at", "pitched pitchedon pitchdate yeastpitched"),
        ("generation", "generation gen yeastgeneration generationatleast g"),
        ("status", "status stage state phase"),
        ("label", "label jar jarno number no id code culture cultureid lot packno"),
        ("strain", "strain yeast yeaststrain name culturename variety"),
        ("kind", "kind type form culturetype format"),
        ("use-by", "useby bestbefore expiry expires expirydate expirationdate usebydate bb bbe"),
        ("mixed", "mixed mixedculture wild brett sour"),
        ("amount", "amount volume vol slurry slurryvolume quantity"),
        ("grams", "grams weight mass packweight amountg"),
        ("stored", "storedat storagetemp storagetemperature temp temperature fridgetemp keptat"),
        ("where", "where location place fridge keptin keptwhere shelf storage stored"),
        ("note", "note notes comment comments remark remarks memo")
    );

    /// <summary>What stands in cells for a choice; the choice's own name and its text are known besides.</summary>
    public static readonly FrozenDictionary<string, FrozenDictionary<string, string[]>> Choices = new Dictionary<
        string,
        FrozenDictionary<string, string[]>
    >(StringComparer.Ordinal)
    {
        ["type"] = Table(
            ("ConicalFermenter", "conical cct ccv fv fermenter fermentor cylindroconical fermentationvessel"),
            ("PressureRatedConical", "unitank uni pressureconical pressuretank pressurefermenter"),
            ("BrightTank", "bright brite britetank bbt bt brightbeertank servingtank conditioningtank"),
            ("PlasticConical", "plasticfermenter plasticconicalfermenter"),
            ("Bucket", "pail plasticbucket carboy")
        ),
        ["material"] = Table(
            ("Stainless", "ss sst inox steel stainlesssteel 304 316 304l 316l ss304 ss316 aisi304 aisi316"),
            ("Plastic", "hdpe pe pet pp polypropylene polyethylene"),
            ("Glass", "glas")
        ),
        ["cooling"] = Table(
            ("None", "no none ambient n"),
            ("Jacket", "glycol glycoljacket jacketed yes y"),
            ("Coil", "coils immersioncoil"),
            ("Room", "coldroom walkin fridge")
        ),
        ["heating"] = Table(
            ("None", "no none n"),
            ("Jacket", "jacketed steam"),
            ("Belt", "heatbelt pad wrap"),
            ("Room", "warmroom")
        ),
        ["bottom"] = Table(("cone", "conical"), ("flat", "flatbottom")),
        ["head"] = Table(("lid", "flat flattop"), ("dome", "domed")),
        ["rating-source"] = Table(("Plate", "dataplate nameplate plate"), ("Manual", "manual datasheet")),
        ["soil"] = Table(
            ("Soiled", "dirty used unclean soil"),
            ("Clean", "cleaned cip washed"),
            ("Sanitized", "sanitised sterile ready"),
            ("Unknown", "unknown unsure"),
            ("InUse", "full occupied inuse")
        ),
        ["closure"] = Table(
            ("Open", "lidoff"),
            ("Vented", "vented ventopen airlock blowoff"),
            ("Closed", "closed shut"),
            ("Sealed", "sealed pressurized pressurised underpressure")
        ),
        ["gas"] = Table(("Air", "air"), ("CarbonDioxide", "co2 carbondioxide"), ("Unknown", "unknown")),
        ["bath"] = Table(
            ("Citric", "citric citricacid"),
            ("Nitric", "nitric nitricacid"),
            ("AcidSoak", "acid acidsoak soak")
        ),
        ["beer"] = Table(("Ale", "top topfermented"), ("Lager", "bottom bottomfermented")),
        ["kind"] = Table(
            ("DryPack", "dry dried drypack sachet brick"),
            ("LiquidPack", "liquid pack pouch vial pitch freshpack smackpack"),
            ("Slurry", "slurry harvested harvest crop jar"),
            ("Starter", "starter propagation prop")
        ),
        ["status"] = Table(
            (
                "Running",
                "running intank infermenter fermenting active conditioning primary secondary lagering crashing carbonating ontap planned"
            ),
            (
                "Finished",
                "finished done packaged complete completed closed archived sold kegged bottled canned discarded"
            )
        ),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static readonly FrozenSet<string> Yes = FrozenSet.Create(
        StringComparer.Ordinal,
        "yes",
        "y",
        "ja",
        "true",
        "x",
        "1",
        "on"
    );

    public static readonly FrozenSet<string> No = FrozenSet.Create(
        StringComparer.Ordinal,
        "no",
        "n",
        "nein",
        "false",
        "0",
        "none",
        "off"
    );

    /// <summary>Letters and digits alone, small.</summary>
    public static string Plain(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private static FrozenDictionary<string, string[]> Table(params (string Key, string Words)[] rows) =>
        rows.ToFrozenDictionary(row => row.Key, row => row.Words.Split(' '), StringComparer.Ordinal);
}
