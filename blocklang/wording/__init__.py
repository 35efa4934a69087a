"""The words of everything that blocklang makes: said in English, and from a catalogue in any other language.

A sentence is written once, in English, where it is said. Imports nothing else of blocklang.
"""

from blocklang.wording.language import ENGLISH, Language, find_language, languages
from blocklang.wording.nouns import Noun, Place, noun
from blocklang.wording.phrases import joined, listed, say_decimal
from blocklang.wording.sayings import LookUp, Message, Part, Saying, Words, message, say, say_number

__all__ = [
    "ENGLISH",
    "Language",
    "LookUp",
    "Message",
    "Noun",
    "Part",
    "Place",
    "Saying",
    "Words",
    "find_language",
    "joined",
    "languages",
    "listed",
    "message",
    "noun",
    "say",
    "say_decimal",
    "say_number",
]
