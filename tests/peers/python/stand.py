"""The stand-in's control side: what members do, what befalls the link, and what was seen of the client."""
import asyncio

import aiohttp


class Stand:
    def __init__(self, address):
        self.address = address

    async def __aenter__(self):
        self.session = aiohttp.ClientSession()
        return self

    async def __aexit__(self, *_):
        await self.session.close()

    # What members do. Those that an answer is due to give a task that ends with the client's first answer.

    async def say(self, channel, person, text):
        return await self._post("say", channel=str(channel), person=person, text=text)

    def press(self, message, person, custom_id):
        return asyncio.ensure_future(self._post("press", message=str(message), person=person, custom_id=custom_id))

    def pick(self, message, person, custom_id, values):
        return asyncio.ensure_future(self._post("pick", message=str(message), person=person, custom_id=custom_id, values=values))

    def command(self, channel, person, name, options):
        return asyncio.ensure_future(self._post("command", channel=channel, person=person, name=name, options=options))

    def submit(self, interaction, values):
        return asyncio.ensure_future(self._post("submit", interaction=str(interaction), values=values))

    # What goes wrong: with the next request that fits, or with the link at once.

    async def fault(self, kind, route):
        return await self._post("fault", kind=kind, route=route)

    async def strike(self, kind):
        return await self._post("strike", kind=kind)

    # What was seen.

    async def identifies(self):
        return sum(link["identify"] is not None for link in await self._get("links"))

    async def last_resume(self):
        """The session and the number the newest resume named; None before the first."""
        resumes = [link["resume"] for link in await self._get("links") if link["resume"]]
        return (resumes[-1]["session_id"], resumes[-1]["seq"]) if resumes else None

    async def violations(self):
        return [f"{v['where']}: {v['what']}" for v in await self._get("violations")]

    async def statuses(self, method, route):
        return [entry["status"] for entry in await self._get("log") if (entry["method"], entry["route"]) == (method, route)]

    async def message(self, message):
        kept = await self._get(f"messages?channel={message.channel.id}")
        return next(one for one in kept if one["id"] == str(message.id))

    async def club(self):
        """The club the stand-in begins with: its first text channel, and a member who is neither its owner nor the bot."""
        world = await self._get("world")
        guild = world["guilds"][0]["id"]
        channel = next(place["id"] for place in world["channels"] if place["guild"] == guild and place["type"] == 0)
        person = [one["id"] for one in world["people"] if not one["bot"]][-1]
        return {"guild": guild, "channel": channel, "person": person}

    async def _get(self, control):
        return await self._told(self.session.get(f"{self.address}/control/{control}"))

    async def _post(self, control, **said):
        return await self._told(self.session.post(f"{self.address}/control/{control}", json=said))

    @staticmethod
    async def _told(asked):
        async with asked as response:
            told = await response.json()
            if response.status != 200:
                raise RuntimeError(f"stand-in: {told['error']}")
            return told
