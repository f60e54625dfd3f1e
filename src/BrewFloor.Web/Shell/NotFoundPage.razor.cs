namespace BrewFloor.Web.Shell;

/// <summary>No such page, tank, batch or culture.</summary>
public sealed partial class NotFoundPage(Wording wording);
