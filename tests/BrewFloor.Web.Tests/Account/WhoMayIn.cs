using BrewFloor.Web.Account;
using BrewFloor.Web.Api;

namespace BrewFloor.Web.Tests.Account;

/// <summary>Every endpoint and who it is for, written by hand.</summary>
internal static class WhoMayIn
{
    public const string Anyone = "anyone";
    public const string Nobody = "nobody";
    public const string ThisMachine = "Metrics"; // what asks here does so from this machine

    // A new page or endpoint is added here by hand, by whoever knows who it is for.
    public static readonly IReadOnlyDictionary<string, string> Table = new Dictionary<string, string>(
        StringComparer.Ordinal
    )
    {
        ["/"] = Policies.Viewer,
        ["/_framework/opaque-redirect"] = Nobody, // the framework's own; without a policy, so closed
        ["/{**path:file}"] = Nobody, // the same, and only before the app is published
        ["/api/v1/batches"] = ApiPolicies.Read,
        ["/api/v1/batches/{number:int}"] = ApiPolicies.Read,
        ["/api/v1/batches/{number:int}/forecast"] = ApiPolicies.Read,
        ["/api/v1/calculate"] = ApiPolicies.Read,
        ["GET /api/v1/calculate/{name}"] = ApiPolicies.Read,
        ["POST /api/v1/calculate/{name}"] = ApiPolicies.Read, // nothing is stored
        ["/api/v1/cultures"] = ApiPolicies.Read,
        ["/api/v1/cultures/{id:guid}"] = ApiPolicies.Read,
        ["/api/v1/items"] = ApiPolicies.Read,
        ["/api/v1/items/{number:int}"] = ApiPolicies.Read,
        ["/api/v1/jobs"] = ApiPolicies.Read,
        ["GET /api/v1/log"] = ApiPolicies.Read,
        ["POST /api/v1/log"] = ApiPolicies.Log,
        ["/api/v1/tanks"] = ApiPolicies.Read,
        ["/api/v1/tanks/{code}"] = ApiPolicies.Read,
        ["/batches"] = Policies.Viewer,
        ["/batches/{Number:int}"] = Policies.Viewer,
        ["/batches/{Number:int}/edit"] = Policies.Brewer,
        ["/batches/{BatchNumber:int}/log/{Kind}"] = Policies.Helper,
        ["/calculators"] = Policies.Viewer,
        ["/calculators/{Name}"] = Policies.Viewer,
        ["/doctor"] = Policies.Owner,
        ["/entries/{Id:guid}/answer"] = Policies.Brewer,
        ["/entries/{Id:guid}/correct"] = Policies.Helper,
        ["/entries/{Id:guid}/strike"] = Policies.Helper,
        ["/error"] = Anyone,
        ["/find"] = Policies.Viewer,
        ["/health/live"] = Anyone,
        ["/health/ready"] = Anyone,
        ["/metrics"] = ThisMachine,
        ["/import"] = Policies.Brewer,
        ["/import/{Id:guid}"] = Policies.Brewer,
        ["/import/template/{kind}"] = Policies.Brewer,
        ["/invite/{Secret}"] = Anyone,
        ["/invite/{secret}/options"] = Anyone,
        ["/invite/{secret}/passkey"] = Anyone,
        ["/items"] = Policies.Viewer,
        ["/items/{Number:int}"] = Policies.Viewer,
        ["/items/{Number:int}/edit"] = Policies.Brewer,
        ["/items/log/{Kind}"] = Policies.Helper,
        ["/items/{ItemNumber:int}/log/{Kind}"] = Policies.Helper,
        ["/jobs"] = Policies.Viewer,
        ["/jobs/{id:guid}/take"] = Policies.Helper,
        ["/jobs/{Id:guid}/put-off"] = Policies.Helper,
        ["/labels"] = Policies.Viewer,
        ["/labels/print"] = Policies.Viewer,
        ["/live"] = ApiPolicies.Read,
        ["/me"] = Policies.Viewer,
        ["/me/access"] = Policies.Viewer,
        ["/me/passkeys"] = Policies.Viewer,
        ["/me/passkeys/options"] = Policies.Viewer,
        ["/me/passkeys/remove"] = Policies.Viewer,
        ["/me/password"] = Policies.Viewer,
        ["/me/sessions/end"] = Policies.Viewer,
        ["/more"] = Policies.Viewer,
        ["/new-tank"] = Policies.Brewer,
        ["/not-found"] = Anyone,
        ["/not-yours"] = Anyone,
        ["/openapi/{documentName}.json"] = Anyone,
        ["/passkeys/options"] = Anyone,
        ["/passkeys/sign-in"] = Anyone,
        ["/passkeys/yes/options"] = Policies.Helper,
        ["/people"] = Policies.Owner,
        ["/people/invites/revoke"] = Policies.Owner,
        ["/people/{Id:guid}"] = Policies.Owner,
        ["/settings/address"] = Policies.Owner,
        ["/settings/configuration"] = Policies.Owner,
        ["/settings/rules"] = Policies.Viewer, // an owner changes them
        ["/settings/security"] = Policies.Owner,
        ["/settings/site"] = Policies.Owner,
        ["/settings/tokens"] = Policies.Owner,
        ["/setup"] = Anyone,
        ["/setup/restore"] = Anyone,
        ["/setup/restore/upload"] = Anyone, // with the code from the console
        ["/sign-in"] = Anyone,
        ["/sign-out"] = Policies.Viewer,
        ["/take-over"] = Policies.Brewer,
        ["/tanks/{Code}"] = Policies.Viewer,
        ["/tanks/{Code}/edit"] = Policies.Brewer,
        ["/tanks/{Code}/ports"] = Policies.Brewer,
        ["/tanks/{Code}/history"] = Policies.Viewer,
        ["/tanks/{Code}/log/{Kind}"] = Policies.Helper,
        ["/theme"] = Anyone,
        ["/yeast"] = Policies.Viewer,
        ["/yeast/{Number:int}"] = Policies.Viewer,
        ["/yeast/{Number:int}/edit"] = Policies.Brewer,
        ["/yeast/log/{Kind}"] = Policies.Helper,
        ["/yeast/{CultureNumber:int}/log/{Kind}"] = Policies.Helper,
    };
}
