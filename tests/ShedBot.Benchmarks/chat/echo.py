"""The barest python3-discord client that answers: what begins with ! is said again, everything else is read past.
usage: python3 echo.py ADDRESS TOKEN       prints "ready" once it is"""
import sys

import discord
import yarl

address, token = sys.argv[1:]
discord.http.Route.BASE = address + "/api/v10"
discord.gateway.DiscordWebSocket.DEFAULT_GATEWAY = yarl.URL("ws" + address[len("http"):] + "/")

intents = discord.Intents(guilds=True, guild_messages=True, message_content=True)
# Without the fixed two seconds that the library waits for more clubs.
client = discord.Client(intents=intents, guild_ready_timeout=0)


@client.event
async def on_ready():
    print("ready", flush=True)


@client.event
async def on_message(message):
    if message.author.id != client.user.id and message.content[:1] == "!":
        await message.channel.send(message.content)


client.run(token, log_handler=None)
