"""Picture files: looked at before they are taken, made anew from their pixels before they leave, aligned and laid side by side."""
