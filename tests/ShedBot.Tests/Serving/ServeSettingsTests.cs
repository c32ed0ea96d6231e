using ShedBot.Serving;

namespace ShedBot.Tests.Serving;

public sealed class ServeSettingsTests
{
    [Fact]
    public void Validate_Defaults_AreGood()
    {
        Assert.True(new ServeSettingsValidator().Validate(null, new()).Succeeded);
        Assert.True(new ChatSettingsValidator().Validate(null, new()).Succeeded);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(366, true)]
    [InlineData(367, false)]
    public void Validate_BackupKeepDays_SaysTheLimitAndWhatWasGiven(int days, bool good) =>
        AssertServe(new() { BackupKeepDays = days }, good, $"between 1 and 366; {days} was given");

    [Fact]
    public void Validate_BackupFolderThatIsNotThere_SaysWhich() =>
        AssertServe(new() { BackupFolder = "/no/such/folder" }, false, "/no/such/folder");

    [Fact]
    public void Validate_NoDataFile_IsRefused() => AssertServe(new() { Data = " " }, false, "Serve:Data");

    /// <summary>The token goes to this address: in the open to this very machine only.</summary>
    [Theory]
    [InlineData("https://chat.example/api/v10/", true)]
    [InlineData("http://127.0.0.1:8080/api/v10/", true)]
    [InlineData("http://chat.example/api/v10/", false)]
    [InlineData("https://chat.example/api/v10", false)]
    [InlineData("chat.example", false)]
    public void Validate_Api_TakesCipheredAddressesEndingInASlash(string api, bool good) => AssertChat(new() { Api = api }, good, "Discord:Api");

    [Theory]
    [InlineData("", true)]
    [InlineData("wss://gateway.example/", true)]
    [InlineData("ws://localhost:1/", true)]
    [InlineData("ws://gateway.example/", false)]
    public void Validate_Gateway_TakesCipheredAddresses(string gateway, bool good) => AssertChat(new() { Gateway = gateway }, good, "Discord:Gateway");

    [Theory]
    [InlineData(null, true)]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(1000, true)]
    [InlineData(1001, false)]
    public void Validate_Shards_SaysTheLimit(int? shards, bool good) => AssertChat(new() { Shards = shards }, good, "between 1 and 1000");

    [Theory]
    [InlineData(-0.1, false)]
    [InlineData(0, true)]
    [InlineData(365, true)]
    [InlineData(365.1, false)]
    [InlineData(double.NaN, false)]
    public void Validate_KeepDays_SaysTheLimit(double days, bool good) => AssertChat(new() { KeepDaysAfterLeaving = days }, good, "between 0 and 365 days");

    [Theory]
    [InlineData("", true)]
    [InlineData("10000000000000001", true)]
    [InlineData("1234", false)]
    [InlineData("a0000000000000001", false)]
    public void Validate_RegisterIn_TakesAnId(string id, bool good) => AssertChat(new() { RegisterIn = id }, good, "Discord:RegisterIn");

    [Theory]
    [InlineData("https://club.example/shedbot", true)]
    [InlineData("mailto:someone@club.example", true)]
    [InlineData("somewhere", false)]
    public void Validate_Operator_TakesAPageOrAnAddress(string at, bool good) => AssertChat(new() { Operator = at }, good, "Discord:Operator");

    [Fact]
    public void ToDiscord_WithoutASessionFolder_KeepsTheSessionBesideTheData()
    {
        var settings = new ChatSettings { RegisterIn = "10000000000000001", Shards = 3 }.ToDiscord("1.2.3", "/srv/data");
        Assert.Equal(Path.Combine("/srv/data", "session"), settings.SessionFolder);
        Assert.Equal(("10000000000000001", 3, "1.2.3", (Uri?)null), (settings.RegisterIn, settings.Shards, settings.Version, settings.Gateway));
    }

    [Fact]
    public void HealthPath_NotGiven_IsBesideTheData() =>
        Assert.Equal(Path.Combine(Path.GetFullPath("elsewhere"), "health.json"), new ServeSettings { Data = Path.Combine("elsewhere", "a.shed") }.HealthPath);

    private static void AssertServe(ServeSettings settings, bool good, string says) =>
        AssertResult(new ServeSettingsValidator().Validate(null, settings), good, says);

    private static void AssertChat(ChatSettings settings, bool good, string says) =>
        AssertResult(new ChatSettingsValidator().Validate(null, settings), good, says);

    private static void AssertResult(Microsoft.Extensions.Options.ValidateOptionsResult result, bool good, string says)
    {
        Assert.Equal(good, result.Succeeded);
        if (!good) Assert.Contains(says, result.FailureMessage, StringComparison.Ordinal);
    }
}
