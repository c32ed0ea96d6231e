"""Plays one club evening with python3-discord against the stand-in and checks each step from both ends.

usage: python3 client.py ADDRESS TOKEN      ADDRESS is the stand-in's, as http://127.0.0.1:PORT
Prints one line for each check that failed, and last: checks passed=N failed=M
"""
import asyncio
import io
import logging
import sys

import discord
import yarl
from discord import app_commands

from stand import Stand

ADDRESS, TOKEN = sys.argv[1:3]
PATIENCE = 15
PRIVATE = 64

# This client has no public option for another base, so its two class attributes are set before it starts.
discord.http.Route.BASE = f"{ADDRESS}/api/v10"
discord.gateway.DiscordWebSocket.DEFAULT_GATEWAY = yarl.URL(ADDRESS.replace("http", "ws", 1) + "/")
logging.getLogger("discord").setLevel(logging.CRITICAL)

intents = discord.Intents.none()
intents.guilds = True
intents.guild_messages = True
intents.dm_messages = True
client = discord.Client(intents=intents, guild_ready_timeout=0)
tree = app_commands.CommandTree(client)
stand = Stand(ADDRESS)
passed = failed = 0


async def check(name, steps):
    global passed, failed
    try:
        await asyncio.wait_for(steps(), PATIENCE)
        passed += 1
    except Exception as error:  # every kind of failure is one failed check
        failed += 1
        said = str(error).split("\n")[0] or "nothing came in time"
        print(f"  failed: {name}: {type(error).__name__}: {said}")


def same(found, wanted):
    if found != wanted:
        raise AssertionError(f"{found!r} is not {wanted!r}")


def coming(event, fits=None):
    """The next event of a name that fits, listened for from now on."""
    return asyncio.ensure_future(client.wait_for(event, check=fits, timeout=PATIENCE))


async def soon(event, fits=None):
    task = coming(event, fits)
    await asyncio.sleep(0)
    return task


def calling(text):
    return f"<@{client.user.id}> {text}"


class Buttons(discord.ui.View):
    """One button whose presses are waited for as plain events."""

    def __init__(self, custom_id, label):
        super().__init__(timeout=None)
        self.add_item(discord.ui.Button(custom_id=custom_id, label=label, style=discord.ButtonStyle.primary))
        self.stop()


class Form(discord.ui.Modal, title="Tell me"):
    words = discord.ui.TextInput(label="In your words", custom_id="words", style=discord.TextStyle.paragraph)

    def __init__(self):
        super().__init__(custom_id="form")
        self.filled = asyncio.get_running_loop().create_future()

    async def on_submit(self, interaction):
        await interaction.response.send_message("Thank you")
        self.filled.set_result(self.words.value)


@tree.command(name="trouble", description="Tell a trouble")
@app_commands.describe(words="In your words")
async def trouble(interaction, words: str):
    await interaction.response.send_message(f"Heard: {words}")


async def play():
    same(await stand.identifies(), 1)
    club = await stand.club()
    person, channel_id = club["person"], club["channel"]
    guild = client.get_guild(int(club["guild"]))
    channel = client.get_channel(int(channel_id))

    async def knows_the_club():
        same(guild.get_channel(int(channel_id)), channel)
        same(channel.type, discord.ChannelType.text)

    async def hears_a_call():
        heard = await soon("message", lambda m: "keeps pulling" in m.content)
        await stand.say(channel_id, person, calling("the bike keeps pulling"))
        message = await heard
        same(str(message.author.id), person)
        same(client.user in message.mentions, True)

    async def hears_no_words():
        heard = await soon("message", lambda m: str(m.author.id) == person)
        await stand.say(channel_id, person, "just chatting")
        same((await heard).content, "")

    async def sends():
        sent = await channel.send("A plain word")
        same((await stand.message(sent))["words"], "A plain word")

    async def replies():
        heard = await soon("message", lambda m: "a question" in m.content)
        await stand.say(channel_id, person, calling("a question"))
        message = await heard
        reply = await message.reply("An answer")
        same((await stand.message(reply))["reply_to"], str(message.id))

    async def edits_and_deletes():
        sent = await channel.send("First thought")
        changed = await soon("raw_message_edit", lambda e: e.message_id == sent.id)
        await sent.edit(content="Second thought")
        await changed
        same((await stand.message(sent))["words"], "Second thought")
        gone = await soon("raw_message_delete", lambda e: e.message_id == sent.id)
        await sent.delete()
        await gone
        same((await stand.message(sent))["deleted"], True)

    async def sends_a_file():
        file = discord.File(io.BytesIO(b"grease due\n"), filename="plan.txt", description="The plan")
        sent = await channel.send("Attached", file=file)
        same(sent.attachments[0].filename, "plan.txt")
        kept = (await stand.message(sent))["files"][0]
        same((kept["name"], kept["description"], kept["bytes"]), ("plan.txt", "The plan", 11))

    async def thread_on_a_message():
        sent = await channel.send("Something to talk about")
        thread = await sent.create_thread(name="On a message", auto_archive_duration=1440)
        same(thread.id, sent.id)
        inside = await thread.send("Inside")
        same((await stand.message(inside))["channel"], str(thread.id))

    async def thread_alone():
        thread = await channel.create_thread(name="Alone", type=discord.ChannelType.public_thread, auto_archive_duration=60)
        inside = await thread.send("Inside")
        same((await stand.message(inside))["channel"], str(thread.id))
        updated = await soon("raw_thread_update", lambda e: e.thread_id == thread.id)
        await thread.edit(archived=True)
        await updated

    async def pressed(custom_id, label):
        sent = await channel.send("Press", view=Buttons(custom_id, label))
        came = await soon("interaction", lambda i: (i.data or {}).get("custom_id") == custom_id)
        deed = stand.press(sent.id, person, custom_id)
        interaction = await came
        same(str(interaction.user.id), person)
        return sent, deed, interaction

    async def puts_off_a_press():
        sent, deed, interaction = await pressed("later", "Later")
        await interaction.response.defer()
        await interaction.edit_original_response(content="Pressed", view=None)
        same(((await deed)["answer_type"], (await stand.message(sent))["words"]), (6, "Pressed"))

    async def redraws():
        sent, deed, interaction = await pressed("now", "Now")
        await interaction.response.edit_message(content="Redrawn", view=Buttons("again", "Again"))
        same(((await deed)["answer_type"], (await stand.message(sent))["words"]), (7, "Redrawn"))

    async def answers_privately():
        _, deed, interaction = await pressed("secret", "Secret")
        await interaction.response.defer(ephemeral=True, thinking=True)
        answer = await interaction.edit_original_response(content="For you alone")
        more = await interaction.followup.send("And more", ephemeral=True, wait=True)
        same((await deed)["answer_type"], 5)
        for message, words in ((answer, "For you alone"), (more, "And more")):
            kept = await stand.message(message)
            same((kept["words"], kept["flags"] & PRIVATE), (words, PRIVATE))

    async def hears_a_pick():
        view = discord.ui.View(timeout=None)
        options = [discord.SelectOption(label="Cable", value="cable"), discord.SelectOption(label="Spring", value="spring")]
        view.add_item(discord.ui.Select(custom_id="which", placeholder="Which", options=options))
        view.stop()
        sent = await channel.send("Pick", view=view)
        came = await soon("interaction", lambda i: (i.data or {}).get("custom_id") == "which")
        deed = stand.pick(sent.id, person, "which", ["spring"])
        interaction = await came
        same(interaction.data["values"], ["spring"])
        await interaction.response.edit_message(content="Spring it is", view=None)
        same((await deed)["answer_type"], 7)
        same((await stand.message(sent))["words"], "Spring it is")

    async def shows_a_form():
        _, deed, interaction = await pressed("tell", "Tell")
        form = Form()
        await interaction.response.send_modal(form)
        filled = stand.submit((await deed)["interaction"], {"words": "it rattles"})
        same(await form.filled, "it rattles")
        same((await filled)["answer_type"], 4)

    async def direct_channel():
        heard = await soon("message", lambda m: "write to me" in m.content)
        await stand.say(channel_id, person, calling("write to me"))
        sent = await (await heard).author.send("Grease is due")
        same((await stand.message(sent))["words"], "Grease is due")
        heard = await soon("message", lambda m: m.content == "done, thank you")
        await stand.say(sent.channel.id, person, "done, thank you")
        same(isinstance((await heard).channel, discord.DMChannel), True)

    async def guild_command():
        tree.copy_global_to(guild=guild)
        same([c.name for c in await tree.sync(guild=guild)], ["trouble"])
        deed = stand.command(channel_id, person, "trouble", {"words": "it slips"})
        same((await deed)["message"]["words"], "Heard: it slips")

    async def global_command():
        same([c.name for c in await tree.sync()], ["trouble"])
        same([c.name for c in await tree.fetch_commands()], ["trouble"])

    async def waits_when_told():
        await stand.fault("RateLimitedUser", "POST /channels/{channel_id}/messages")
        sent = await channel.send("After a wait")
        same((await stand.message(sent))["words"], "After a wait")
        same((await stand.statuses("POST", "/channels/{channel_id}/messages"))[-2:], [429, 200])

    def comes_back(fault, kept):
        async def steps():
            identifies, resume = await stand.identifies(), await stand.last_resume()
            returned = await soon("resumed" if kept else "ready")
            await stand.strike(fault)
            await returned
            same(await stand.identifies(), identifies + (0 if kept else 1))
            same(await stand.last_resume() == resume, not kept)
            heard = await soon("message", lambda m: f"after: {fault}" in m.content)
            await stand.say(channel_id, person, calling(f"after: {fault}"))
            await heard
        return steps

    async def is_told_what_it_missed():
        heard = await soon("message", lambda m: "while you were away" in m.content)
        await stand.strike("DroppedSocket")
        await stand.say(channel_id, person, calling("while you were away"))
        await heard

    async def broke_no_rule():
        same(await stand.violations(), [])

    await check("knows the club", knows_the_club)
    await check("hears a member who calls it", hears_a_call)
    await check("is not told the words of a member who does not", hears_no_words)
    await check("sends", sends)
    await check("replies", replies)
    await check("edits and deletes", edits_and_deletes)
    await check("sends a file", sends_a_file)
    await check("starts a thread on a message", thread_on_a_message)
    await check("starts a thread alone and archives it", thread_alone)
    await check("puts off a press, then edits the message", puts_off_a_press)
    await check("redraws at a press", redraws)
    await check("answers a press privately and says more", answers_privately)
    await check("hears what was picked from a list", hears_a_pick)
    await check("shows a form and reads it", shows_a_form)
    await check("opens a direct channel, sends and hears", direct_channel)
    await check("registers a command and answers it", guild_command)
    await check("registers commands for every club", global_command)
    await check("waits when told it sends too fast", waits_when_told)
    # What befalls the link: the fault, and whether the session outlives it.
    await check("comes back when it is asked to reconnect", comes_back("Reconnect", kept=True))
    await check("comes back when it is told its session may go on", comes_back("InvalidSessionKept", kept=True))
    await check("comes back when it is told its session is lost", comes_back("InvalidSessionLost", kept=False))
    await check("comes back when it loses the link", comes_back("DroppedSocket", kept=True))
    await check("is told what it missed while the link was gone", is_told_what_it_missed)
    await check("broke no rule of the platform", broke_no_rule)


async def main():
    async with client, stand:
        running = asyncio.ensure_future(client.start(TOKEN))

        async def logs_in():
            done, _ = await asyncio.wait({running, asyncio.ensure_future(client.wait_for("ready"))}, return_when=asyncio.FIRST_COMPLETED)
            for task in done:
                task.result()

        await check("logs in", logs_in)
        if failed == 0:
            await play()
        await client.close()
        await running
    print(f"checks passed={passed} failed={failed}")
    return 1 if failed else 0


sys.exit(asyncio.run(main()))
