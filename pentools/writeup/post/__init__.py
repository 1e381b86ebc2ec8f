"""The story as a post to paste: a plain fragment of HTML, the same as Markdown, and its pictures as files."""
