package freshet.offline;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/** The cable between a phone and the server: it can be cut, mended, and made to lose an answer on its way back. */
final class Cable implements AutoCloseable {

    private static final String DELIVERY = "POST /offline/deliver ";

    private final int server;
    private final int port;
    private final Set<Socket> ends = ConcurrentHashMap.newKeySet();
    private final AtomicInteger deliveries = new AtomicInteger();
    private final AtomicInteger toLose = new AtomicInteger();
    private volatile ServerSocket ear;

    Cable(int server) {
        this.server = server;
        this.ear = listen(0);
        this.port = ear.getLocalPort();
    }

    int port() {
        return port;
    }

    /** How many deliveries went through it to the server. */
    int deliveries() {
        return deliveries.get();
    }

    /** Lets the next deliveries reach the server and their answers not the phone. */
    void loseAnswers(int many) {
        toLose.set(many);
    }

    void cut() {
        shut(ear);
        ends.forEach(Cable::shut);
        ends.clear();
    }

    void mend() {
        ear = listen(port);
    }

    @Override
    public void close() {
        cut();
    }

    private ServerSocket listen(int at) {
        try {
            ServerSocket socket = new ServerSocket();
            socket.setReuseAddress(true);
            socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), at));
            run(() -> accept(socket));
            return socket;
        } catch (IOException taken) {
            throw new UncheckedIOException(taken);
        }
    }

    private void accept(ServerSocket socket) {
        try {
            while (true) {
                Socket phone = socket.accept();
                Socket its = new Socket(InetAddress.getLoopbackAddress(), server);
                ends.add(phone);
                ends.add(its);
                if (socket.isClosed()) {
                    // cut at this very moment
                    shut(phone);
                    shut(its);
                }
                AtomicInteger losing = new AtomicInteger();
                run(() -> carry(phone, its, losing, true));
                run(() -> carry(its, phone, losing, false));
            }
        } catch (IOException cut) {
            shut(socket);
        }
    }

    private void carry(Socket from, Socket to, AtomicInteger losing, boolean out) {
        byte[] bytes = new byte[65_536];
        try (InputStream in = from.getInputStream();
                OutputStream on = to.getOutputStream()) {
            for (int n = in.read(bytes); n >= 0; n = in.read(bytes)) {
                if (out && new String(bytes, 0, n, StandardCharsets.ISO_8859_1).startsWith(DELIVERY)) {
                    deliveries.incrementAndGet();
                    losing.set(toLose.getAndUpdate(left -> Math.max(0, left - 1)));
                } else if (!out && losing.get() > 0) {
                    break;
                }
                on.write(bytes, 0, n);
                on.flush();
            }
        } catch (IOException cut) {
            // the other end is shut too
        }
        shut(from);
        shut(to);
    }

    private static void shut(AutoCloseable end) {
        try {
            end.close();
        } catch (Exception shutAlready) {
            // nothing goes through it any more
        }
    }

    private static void run(Runnable work) {
        Thread thread = new Thread(work, "cable");
        thread.setDaemon(true);
        thread.start();
    }
}
