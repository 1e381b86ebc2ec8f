"""The nib: its flow, its flex, its tip, and the setting of its feed; its lines on paper."""
