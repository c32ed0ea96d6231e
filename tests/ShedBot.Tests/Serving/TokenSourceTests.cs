using Microsoft.Extensions.Configuration;
using ShedBot.Serving;
using ShedBot.Starting;

namespace ShedBot.Tests.Serving;

public sealed class TokenSourceTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly List<string> warned = [];

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Read_FromAFile_TakesItWithoutTheLineEnd()
    {
        Assert.Equal(Secret.Token, Read(file: Write(Secret.Token + "\n")));
        Assert.Empty(warned);
    }

    [Fact]
    public void Read_FromASetting_TakesIt() => Assert.Equal(Secret.Token, Read(plain: Secret.Token));

    [Fact]
    public void Read_FileAndSetting_TakesTheFileAndWarns()
    {
        Assert.Equal(Secret.Token, Read(file: Write(Secret.Token), plain: "another"));
        Assert.Contains("the file is used", Assert.Single(warned), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_FileThatEverybodyCanRead_WarnsAndSaysHowToMendIt()
    {
        if (OperatingSystem.IsWindows()) return;
        var file = Write(Secret.Token);
        File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.OtherRead);
        Read(file: file);
        var warning = Assert.Single(warned);
        Assert.Contains("chmod", warning, StringComparison.Ordinal);
        Secret.AssertNotIn(warning);
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \n\n")]
    public void Read_EmptyFile_IsRefusedWithWhatToDo(string content) =>
        Assert.Contains("is empty", Refused(file: Write(content)), StringComparison.Ordinal);

    [Fact]
    public void Read_NoFile_IsRefusedWithItsName() => Assert.Contains("no-such-file", Refused(file: temp.File("no-such-file")), StringComparison.Ordinal);

    [Fact]
    public void Read_NothingConfigured_SaysWhereToPutIt() => Assert.Contains("SHEDBOT_DISCORD__TOKENFILE", Refused(), StringComparison.Ordinal);

    /// <summary>A prefix, two lines, a word processor's quotes: it is refused, and what was given is not repeated.</summary>
    [Theory]
    [InlineData("Bot " + Secret.Token)]
    [InlineData(Secret.Token + "\n" + Secret.Token)]
    [InlineData("\u201c" + Secret.Token + "\u201d")]
    public void Read_SomethingThatIsNoToken_IsRefusedWithoutRepeatingIt(string content)
    {
        Secret.AssertNotIn(Refused(file: Write(content)));
        Secret.AssertNotIn(Refused(plain: content));
        Assert.Empty(warned);
    }

    [Fact]
    public void Read_ALongFile_IsRefusedUnread() => Assert.Contains("too long", Refused(file: Write(new string('a', 2000))), StringComparison.Ordinal);

    [Theory]
    [InlineData(null, null, false)]
    [InlineData(" ", "", false)]
    [InlineData(null, "x", true)]
    [InlineData("x", null, true)]
    public void IsConfigured_TellsWhetherThereIsOneToLookFor(string? file, string? plain, bool configured) =>
        Assert.Equal(configured, TokenSource.IsConfigured(Settings(file, plain)));

    private string Refused(string? file = null, string? plain = null)
    {
        var refusal = Assert.Throws<SettingRefusedException>(() => Read(file, plain));
        Assert.Null(refusal.InnerException);
        return refusal.Message;
    }

    private string Read(string? file = null, string? plain = null) => TokenSource.Read(Settings(file, plain), warned.Add);

    private static IConfiguration Settings(string? file, string? plain) => new ConfigurationBuilder()
        .AddInMemoryCollection([new("Discord:TokenFile", file), new("Discord:Token", plain)])
        .Build();

    private string Write(string content)
    {
        var file = temp.File("token");
        File.WriteAllText(file, content);
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        return file;
    }
}
