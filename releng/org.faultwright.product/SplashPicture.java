/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import javax.imageio.ImageIO;

/**
 * Draws what is seen while the window is being made: our mark and name on the ground of the mark, which can be told from a light and from a
 * dark desktop. It says nothing that grows old, such as a version. Run by releng/pictures.sh, from the top folder.
 */
final class SplashPicture {
    private static final String ICON = "bundles/org.faultwright.workbench/icons/faultwright256.png";
    private static final String FONTS = "bundles/org.faultwright.publish/src/org/faultwright/publish/fonts/DejaVuSansCondensed";
    private static final String PICTURE = "releng/org.faultwright.product/splash.png";
    private static final int WIDTH = 500;
    private static final int HEIGHT = 220;
    private static final int MARK = 128;
    private static final int EDGE = 40;
    private static final Color GROUND = new Color(0x24505F);
    private static final Color BORDER = new Color(0x7FA3AE);
    private static final Color NAME = Color.WHITE;
    /** 7 : 1 on the ground. */
    private static final Color BESIDE = new Color(0xDCE8EB);

    private SplashPicture() {
    }

    public static void main(String[] none) throws IOException, FontFormatException {
        System.setProperty("java.awt.headless", "true");
        BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D on = picture.createGraphics();
        on.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        on.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        on.setColor(GROUND);
        on.fillRect(0, 0, WIDTH, HEIGHT);
        on.setColor(BORDER);
        on.drawRect(0, 0, WIDTH - 1, HEIGHT - 1);
        // halved by the mean of the pixels, which leaves the edges smooth
        on.drawImage(ImageIO.read(new File(ICON)).getScaledInstance(MARK, MARK, Image.SCALE_AREA_AVERAGING), EDGE, (HEIGHT - MARK) / 2, null);
        int words = EDGE + MARK + 16;
        on.setColor(NAME);
        on.setFont(font("-Bold", 38));
        on.drawString("Faultwright", words, HEIGHT / 2 + 2);
        on.setColor(BESIDE);
        on.setFont(font("", 17));
        on.drawString("A workbench for repair procedures", words, HEIGHT / 2 + 32);
        on.dispose();
        ImageIO.write(picture, "png", new File(PICTURE));
    }

    private static Font font(String cut, float pixels) throws IOException, FontFormatException {
        return Font.createFont(Font.TRUETYPE_FONT, new File(FONTS + cut + ".ttf")).deriveFont(pixels);
    }
}
