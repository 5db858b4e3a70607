"""The papers for certification: parts the farm chooses, each printable alone."""

from reports.papers.packet.paper import packet_paper

__all__ = ["packet_paper"]
